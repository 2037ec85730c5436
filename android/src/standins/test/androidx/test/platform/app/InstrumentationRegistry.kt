package androidx.test.platform.app

import android.app.Instrumentation
import android.os.Bundle

/** Where Robolectric leaves its instrumentation. */
object InstrumentationRegistry {
    private var instrumentation: Instrumentation? = null
    private var arguments = Bundle()

    @JvmStatic
    fun registerInstance(instrumentation: Instrumentation?, arguments: Bundle?) {
        this.instrumentation = instrumentation
        this.arguments = arguments ?: Bundle()
    }

    @JvmStatic
    fun getInstrumentation(): Instrumentation = checkNotNull(instrumentation) { "nothing was registered" }

    @JvmStatic
    fun getArguments(): Bundle = arguments
}
