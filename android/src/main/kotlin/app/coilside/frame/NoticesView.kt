package app.coilside.frame

import android.annotation.SuppressLint
import android.view.View
import android.widget.LinearLayout
import app.coilside.R
import app.coilside.blocks.Ui
import app.coilside.session.Session
import app.coilside.session.Trouble
import app.coilside.view.GAP_DP
import app.coilside.view.PressButton
import app.coilside.view.below
import coilside.Notice
import coilside.Tone

/** What must be seen first: what went wrong with a call, and the notices of the core. */
@SuppressLint("ViewConstructor")
class NoticesView(private val ui: Ui, private val session: Session) : LinearLayout(ui.context) {
    private var shown: Any? = null
    private var told = emptyList<Notice>()

    init {
        orientation = VERTICAL
    }

    /** Shows them. Returns whether there is one that was not there before. */
    fun show(notices: List<Notice>): Boolean {
        val trouble = session.trouble
        val wanted = listOf(trouble, notices)
        if (wanted == shown) return false
        val isNew = trouble != null && trouble !== (shown as? List<*>)?.firstOrNull() || notices.any { it !in told }
        shown = wanted
        told = notices
        removeAllViews()
        trouble?.let { add(troubleView(it)) }
        for (notice in notices) add(NoticeView(ui, notice))
        visibility = if (childCount == 0) GONE else VISIBLE
        if (isNew) for (at in 0 until childCount) announce(getChildAt(at), notices, trouble)
        return isNew
    }

    private fun add(view: View) = addView(view, context.below(if (childCount == 0) 0 else GAP_DP))

    private fun announce(view: View, notices: List<Notice>, trouble: Trouble?) {
        if (view !== getChildAt(0)) return
        val said = if (trouble != null) listOf(titleOf(trouble)) else notices.flatMap { listOf(it.title) + it.lines }
        announceForAccessibility(said.joinToString(". "))
    }

    private fun titleOf(trouble: Trouble) = ui.words.say(if (trouble.isFull) "phone-full" else "failed")

    private fun troubleView(trouble: Trouble): View {
        val ways = ArrayList<View>()
        if (trouble.again != null) ways += way("try-again", "again") { session.tryAgain() }
        ways += way("close", "aside") { session.putAside() }
        val lines = if (trouble.isFull) emptyList() else listOf(trouble.detail)
        return NoticeView(ui, Notice(Tone.DANGER, titleOf(trouble), lines, emptyList()), ways)
    }

    private fun way(key: String, role: String, press: () -> Unit) =
        PressButton(context, ui.palette, ui.words.say(key), fire = press).apply { setTag(R.id.role, role) }
}
