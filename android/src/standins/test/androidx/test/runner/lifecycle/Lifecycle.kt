package androidx.test.runner.lifecycle

import android.app.Activity

enum class Stage { PRE_ON_CREATE, CREATED, STARTED, RESUMED, PAUSED, STOPPED, RESTARTED, DESTROYED }

enum class ApplicationStage { PRE_ON_CREATE, CREATED }

fun interface ActivityLifecycleCallback {
    fun onActivityLifecycleChanged(activity: Activity, stage: Stage)
}

interface ActivityLifecycleMonitor {
    fun addLifecycleCallback(callback: ActivityLifecycleCallback)

    fun removeLifecycleCallback(callback: ActivityLifecycleCallback)

    fun getLifecycleStageOf(activity: Activity): Stage

    fun getActivitiesInStage(stage: Stage): Collection<Activity>
}

interface ApplicationLifecycleMonitor

/** Robolectric leaves its monitor here and asks for it again. */
object ActivityLifecycleMonitorRegistry {
    private var monitor: ActivityLifecycleMonitor? = null

    @JvmStatic
    fun registerInstance(monitor: ActivityLifecycleMonitor?) {
        this.monitor = monitor
    }

    @JvmStatic
    fun getInstance(): ActivityLifecycleMonitor = checkNotNull(monitor) { "nothing was registered" }
}

object ApplicationLifecycleMonitorRegistry {
    @JvmStatic
    fun registerInstance(@Suppress("UNUSED_PARAMETER") monitor: ApplicationLifecycleMonitor?) = Unit
}
