package app.coilside.frame

import android.app.Activity
import android.view.View
import android.widget.FrameLayout
import app.coilside.ShellApp
import app.coilside.blocks.Ui
import app.coilside.effects.Stage
import app.coilside.view.MATCH
import coilside.Screen

/** What lies above the screen: the menu, a photograph to take, a question about the place, the summary, an alarm. */
class Overlays(
    private val ui: Ui,
    private val activity: Activity,
    private val root: FrameLayout,
    private val page: View,
    private val parts: ShellApp.Parts,
    private val ways: Ways,
) {
    /** What the activity does for a sheet. */
    interface Ways {
        fun allowPlace()
        fun closeMenu()
        fun closeSummary()
    }

    private var menu: MenuSheet? = null
    private var photo: PhotoSheet? = null
    private var place: PlaceSheet? = null
    private var summary: SummarySheet? = null
    private var alarm: AlarmSheet? = null
    private var bottom = 0
    private var top = 0

    /** Shows what is to be shown above [screen]. */
    fun show(screen: Screen, menuOpen: Boolean, handover: Handover?) {
        menu = kept(menu, menuOpen, { MenuSheet(ui, ways::closeMenu) }) { it.show(screen) }
        val wanted = parts.camera.wanted.takeIf { parts.camera.stage != Stage.AWAY }
        val shoot = { parts.camera.take(activity) }
        photo = kept(photo, wanted != null, { PhotoSheet(ui, parts.camera, shoot) { parts.camera.pick(activity) } }) { sheet ->
            wanted?.let { sheet.show(it, shotOf(screen.blocks, it.request.slot)) }
        }
        place = kept(place, parts.locator.asksFor != null, { PlaceSheet(ui, ways::allowPlace, parts.locator::answered) }) { }
        showSummary(handover)
        showAlarm()
        ordered()
    }

    private fun showSummary(handover: Handover?) {
        val shown = summary
        if (shown != null && shown.page != handover?.page) {
            root.removeView(shown)
            shown.end()
            summary = null
        }
        if (handover == null || summary != null) return
        summary = SummarySheet(ui, activity, handover.page, handover.title, ways::closeSummary).also {
            root.addView(it, FrameLayout.LayoutParams(MATCH, MATCH))
            it.inset(top, bottom)
            if (handover.isToPrint) it.print()
        }
    }

    /** An alarm of its own text; it lies above all else. */
    fun showAlarm() {
        val rings = parts.alarms.ringing
        if (alarm?.tag != rings?.id) {
            alarm?.let(root::removeView)
            alarm = rings?.let { AlarmSheet(ui, parts.alarms, it.text).apply { tag = it.id } }
            alarm?.let { root.addView(it, FrameLayout.LayoutParams(MATCH, MATCH)) }
        }
        alarm?.bringToFront()
        veil()
    }

    private fun <S : Sheet> kept(sheet: S?, wanted: Boolean, make: () -> S, fill: (S) -> Unit): S? {
        if (!wanted) {
            sheet?.let(root::removeView)
            return null
        }
        val there = sheet ?: make().also {
            root.addView(it, FrameLayout.LayoutParams(MATCH, MATCH))
            it.inset(bottom)
        }
        fill(there)
        return there
    }

    private fun ordered() {
        summary?.bringToFront()
        alarm?.bringToFront()
        veil()
    }

    /** A screen reader reads only what lies on top. */
    private fun veil() {
        val last = root.childCount - 1
        for (at in 0..last) {
            root.getChildAt(at).importantForAccessibility =
                if (at == last) View.IMPORTANT_FOR_ACCESSIBILITY_AUTO else View.IMPORTANT_FOR_ACCESSIBILITY_NO_HIDE_DESCENDANTS
        }
        if (last == 0) page.importantForAccessibility = View.IMPORTANT_FOR_ACCESSIBILITY_AUTO
    }

    /** Leaves what lies on top. Returns whether there was anything. */
    fun back(): Boolean {
        when {
            alarm != null -> parts.alarms.stop()
            summary != null -> ways.closeSummary()
            else -> (listOfNotNull(menu, photo, place).maxByOrNull(root::indexOfChild) ?: return false).dismiss()
        }
        return true
    }

    /** Keeps clear of the system's bars, pixels. */
    fun inset(top: Int, bottom: Int) {
        this.top = top
        this.bottom = bottom
        for (sheet in listOfNotNull(menu, photo, place)) sheet.inset(bottom)
        summary?.inset(top, bottom)
    }

    fun end() = summary?.end()
}

/** The summary that is shown: its page, its name, and whether it goes to the printer at once. */
class Handover(val page: String, val title: String, val isToPrint: Boolean)
