package androidx.annotation

/** Stands in for Android's own annotation, which the generated bindings carry; it says the same and does as little. */
@Retention(AnnotationRetention.BINARY)
annotation class RequiresApi(val value: Int)
