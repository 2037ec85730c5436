//! One library, one namespace: everything that the core exports, for Kotlin, Swift and Python.
coilside_core::uniffi_reexport_scaffolding!();
