package app.coilside.support

import android.app.job.JobParameters
import android.app.job.JobScheduler
import android.app.job.JobService
import android.content.Context
import android.content.Intent
import android.os.Looper
import app.coilside.ShellApp
import java.time.Duration
import org.robolectric.Robolectric
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf
import org.robolectric.shadow.api.Shadow

/** The system that runs the shell's jobs when it sees fit. */
object Jobs {
    private val scheduler get() = RuntimeEnvironment.getApplication().getSystemService(Context.JOB_SCHEDULER_SERVICE) as JobScheduler

    /** What was planned. */
    fun planned() = scheduler.allPendingJobs.toList()

    /**
     * Runs a job until it says that it is finished or [enough] says that the system takes its time away. Returns whether it wants to
     * be run again.
     */
    fun <J : JobService> run(service: Class<J>, atMostMs: Long, enough: () -> Boolean = { false }): Boolean {
        val job = Robolectric.buildService(service, Intent()).create().get()
        job.onBind(Intent())
        val told = Shadow.newInstanceOf(JobParameters::class.java)
        if (!job.onStartJob(told)) {
            shadowOf(Looper.getMainLooper()).idle()
            return false
        }
        val until = System.nanoTime() + atMostMs * 1_000_000
        val shadow = shadowOf(job)
        while (!shadow.isJobFinished) {
            check(System.nanoTime() < until) { "the job is still at work after $atMostMs ms: ${ShellApp.session(job).screen?.outbox}" }
            shadowOf(Looper.getMainLooper()).idleFor(Duration.ofMillis(LOOK_MS))
            Thread.sleep(LOOK_MS)
            if (enough()) return job.onStopJob(told).also { job.onDestroy() }
        }
        job.onDestroy()
        return shadow.isRescheduleNeeded
    }

    private const val LOOK_MS = 20L
}
