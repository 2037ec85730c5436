package androidx.test.runner.intent

import android.app.Instrumentation
import android.content.Intent

interface IntentMonitor

interface IntentStubber {
    fun getActivityResultForIntent(intent: Intent): Instrumentation.ActivityResult?
}

object IntentMonitorRegistry {
    @JvmStatic
    fun registerInstance(@Suppress("UNUSED_PARAMETER") monitor: IntentMonitor?) = Unit
}

/** None is ever registered: what an activity starts is seen in Robolectric's own shadow. */
object IntentStubberRegistry {
    @JvmStatic
    fun isLoaded() = false

    @JvmStatic
    fun getInstance(): IntentStubber = error("nothing was registered")

    @JvmStatic
    fun reset() = Unit
}
