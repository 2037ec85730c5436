package app.coilside.frame

import android.app.Activity
import android.content.ActivityNotFoundException
import android.content.Intent
import android.net.Uri
import app.coilside.blocks.LinkBlock
import app.coilside.session.Session
import coilside.Block

/** Leads where a link goes: to the owner's summary, which is shown or printed here, or to another app. */
class Links(private val activity: Activity, private val session: Session, private val changed: () -> Unit) {
    /** The summary that lies above the screen; none where there is none. */
    var handover: Handover? = null
        private set

    fun follow(link: Block.Link) = when {
        link.to == LinkBlock.SUMMARY_PAGE -> handOver(link.label, isToPrint = false)
        link.to == LinkBlock.SUMMARY_PAPER -> handOver(link.label, isToPrint = true)
        link.to.startsWith("tel:", ignoreCase = true) -> show(Intent(Intent.ACTION_DIAL, Uri.parse(link.to)))
        else -> show(Intent(Intent.ACTION_VIEW, Uri.parse(link.to)))
    }

    /** The summary of that name lay above the screen before the activity was made anew. */
    fun again(title: String) = handOver(title, isToPrint = false)

    private fun handOver(title: String, isToPrint: Boolean) = session.summary { summary ->
        handover = summary?.let { Handover(it, title, isToPrint) }
        changed()
    }

    fun closeSummary() {
        handover = null
        changed()
    }

    /** Opens another app; where there is none, that is said. */
    fun show(intent: Intent) {
        try {
            activity.startActivity(intent)
        } catch (none: ActivityNotFoundException) {
            session.say(session.words.say("open-none"))
        }
    }
}
