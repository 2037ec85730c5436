package app.coilside.frame

import android.os.Handler
import android.os.Looper
import app.coilside.blocks.clockRuns
import app.coilside.blocks.nextLimit
import app.coilside.session.Session

/** The time goes on in front of the person: clocks run, and the screen is read now and then, so that they and the outbox are true. */
class Ticks(private val session: Session, private val page: Page, private val nowMs: () -> Long) {
    private val main = Handler(Looper.getMainLooper())
    private var limitMs: Long? = null

    private val ticks = object : Runnable {
        override fun run() {
            tick()
            main.postDelayed(this, TICK_MS)
        }
    }

    private val reads = object : Runnable {
        override fun run() {
            session.refresh()
            main.postDelayed(this, POLL_MS)
        }
    }

    fun begin() {
        main.post(ticks)
        main.postDelayed(reads, POLL_MS)
    }

    fun end() = main.removeCallbacksAndMessages(null)

    private fun tick() {
        val blocks = session.screen?.blocks ?: return
        if (!clockRuns(blocks)) return
        val limit = limitMs
        if (limit != null && nowMs() >= limit) session.refresh()
        limitMs = nextLimit(blocks, nowMs())
        page.tick()
    }

    private companion object {
        const val TICK_MS = 500L
        const val POLL_MS = 5_000L
    }
}
