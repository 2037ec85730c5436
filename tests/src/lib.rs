//! What crosses parts: helpers shared by the whole-visit and fault tests.
