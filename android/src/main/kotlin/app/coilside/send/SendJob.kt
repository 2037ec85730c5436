package app.coilside.send

import android.app.job.JobInfo
import android.app.job.JobParameters
import android.app.job.JobScheduler
import android.app.job.JobService
import android.content.ComponentName
import android.content.Context
import android.os.Handler
import android.os.Looper
import app.coilside.ShellApp
import app.coilside.session.Session
import coilside.Tone

/** Sends while the app is not in front, whenever there is a network; also after the phone was switched off and on. */
class SendJob : JobService() {
    private val main = Handler(Looper.getMainLooper())
    private var quietSince = 0

    override fun onStartJob(params: JobParameters): Boolean {
        val sender = ShellApp.sender(this)
        if (sender.isWanted) {
            // In front the app sends by itself. Planned once this one is over: a job that runs would be stopped by its own plan.
            main.post { plan(this, STAND_BY_MS) }
            return false
        }
        sender.want(this, WINDOW_MS)
        quietSince = 0
        main.postDelayed({ look(params) }, LOOK_MS)
        return true
    }

    /** Ends where nothing waits, or where what waits rests: then the system is asked to come again. */
    private fun look(params: JobParameters) {
        val session = ShellApp.session(this)
        val sender = ShellApp.sender(this)
        // Looked at before the screen is read again, which is work too.
        quietSince = if (session.busy || sender.isCarrying) 0 else quietSince + 1
        val empty = isEmpty(session)
        session.refresh()
        if (quietSince < QUIET_LOOKS) {
            main.postDelayed({ look(params) }, LOOK_MS)
            return
        }
        sender.leave(this)
        jobFinished(params, !empty)
    }

    /** The system takes the network or the time away. */
    override fun onStopJob(params: JobParameters): Boolean {
        main.removeCallbacksAndMessages(null)
        ShellApp.sender(this).leave(this, atOnce = true)
        return !isEmpty(ShellApp.session(this))
    }

    companion object {
        private const val ID = 1
        private const val LOOK_MS = 2_000L
        private const val QUIET_LOOKS = 3

        /**
         * How long a job sends, milliseconds. The systems stop one after ten minutes, Android 14 and later not before them where the app's
         * share of the day allows it; what is under way then needs up to 80 seconds to end.
         */
        const val WINDOW_MS = 8 * 60_000L

        /** When a job looks after what the app in front left unsent, if the process ended without a word, milliseconds. */
        const val STAND_BY_MS = 5 * 60_000L
        private const val BACKOFF_MS = 30_000L

        /** Whether everything is at the office; not known: it is not. */
        private fun isEmpty(session: Session): Boolean = session.screen?.outbox?.tone == Tone.GOOD

        /** Asks the system to send when there is a network, not before [afterMs]. Asked again, it is asked once. */
        fun plan(context: Context, afterMs: Long = 0) {
            val job = JobInfo.Builder(ID, ComponentName(context, SendJob::class.java))
                .setRequiredNetworkType(JobInfo.NETWORK_TYPE_ANY)
                .setMinimumLatency(afterMs)
                .setBackoffCriteria(BACKOFF_MS, JobInfo.BACKOFF_POLICY_EXPONENTIAL)
                .setPersisted(true)
                .build()
            context.getSystemService(JobScheduler::class.java).schedule(job)
        }

        /** Plans it where something waits. */
        fun planIfWaiting(context: Context, session: Session) {
            if (!isEmpty(session)) plan(context)
        }

        /** Whether the system is asked already. */
        fun isPlanned(context: Context): Boolean = context.getSystemService(JobScheduler::class.java).getPendingJob(ID) != null
    }
}
