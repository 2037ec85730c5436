package app.coilside.send

import android.content.Context
import coilside.Live
import coilside.Tone

/**
 * Has the system send as soon as something waits: a process in front may end without a word. Followed after each answer of
 * the core; the system is asked only where what waits is the first.
 */
class Plan(private val app: Context, private val sender: Sender) {
    private var isMade = false

    /** What the core says of the outbox now. */
    fun follow(outbox: Live) {
        val waits = outbox.tone != Tone.GOOD
        if (waits && !isMade && !SendJob.isPlanned(app)) SendJob.plan(app, if (sender.isWanted) SendJob.STAND_BY_MS else 0)
        isMade = waits
    }
}
