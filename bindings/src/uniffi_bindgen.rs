//! Writes the Kotlin, Swift and Python bindings from the compiled library.
fn main() {
    uniffi::uniffi_bindgen_main();
}
