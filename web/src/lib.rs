//! The browser shell.
