package androidx.test.internal.runner.lifecycle

import android.app.Activity
import android.app.Application
import androidx.test.runner.lifecycle.ActivityLifecycleCallback
import androidx.test.runner.lifecycle.ActivityLifecycleMonitor
import androidx.test.runner.lifecycle.ApplicationLifecycleMonitor
import androidx.test.runner.lifecycle.ApplicationStage
import androidx.test.runner.lifecycle.Stage

/** Knows at which stage each activity is that still lives; what is destroyed is forgotten, so that a long test keeps none. */
class ActivityLifecycleMonitorImpl : ActivityLifecycleMonitor {
    private val stages = LinkedHashMap<Activity, Stage>()

    override fun addLifecycleCallback(callback: ActivityLifecycleCallback) = Unit

    override fun removeLifecycleCallback(callback: ActivityLifecycleCallback) = Unit

    override fun getLifecycleStageOf(activity: Activity): Stage = stages[activity] ?: Stage.DESTROYED

    override fun getActivitiesInStage(stage: Stage): Collection<Activity> = stages.filterValues { it == stage }.keys

    fun signalLifecycleChange(stage: Stage, activity: Activity) {
        if (stage == Stage.DESTROYED) stages.remove(activity) else stages[activity] = stage
    }
}

class ApplicationLifecycleMonitorImpl : ApplicationLifecycleMonitor {
    @Suppress("UNUSED_PARAMETER")
    fun signalLifecycleChange(application: Application, stage: ApplicationStage) = Unit
}
