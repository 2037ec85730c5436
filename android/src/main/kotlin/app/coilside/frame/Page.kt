package app.coilside.frame

import android.annotation.SuppressLint
import android.graphics.Rect
import android.os.Build
import android.view.Gravity
import android.view.View
import android.view.accessibility.AccessibilityEvent
import android.view.accessibility.AccessibilityNodeInfo
import android.widget.EditText
import android.widget.FrameLayout
import android.widget.LinearLayout
import android.widget.ScrollView
import app.coilside.blocks.BlockList
import app.coilside.blocks.DwellBlock
import app.coilside.blocks.DwellPlace
import app.coilside.blocks.Ui
import app.coilside.blocks.button
import app.coilside.blocks.loneDwell
import app.coilside.blocks.onlyToWait
import app.coilside.session.Session
import app.coilside.view.Column
import app.coilside.view.Flow
import app.coilside.view.GAP_DP
import app.coilside.view.MATCH
import app.coilside.view.MEASURE_DP
import app.coilside.view.WRAP
import app.coilside.view.below
import app.coilside.view.column
import app.coilside.view.dp
import app.coilside.view.isTight
import app.coilside.view.pad
import coilside.Block
import coilside.Button
import coilside.Screen

/** A whole screen of the core: head, strip, notices, blocks and foot. */
@SuppressLint("ViewConstructor")
class Page(private val ui: Ui, session: Session, private val scrolled: Scrolled, openMenu: () -> Unit) : LinearLayout(ui.context) {
    private val bar = View(context).apply { setBackgroundColor(ui.palette.top) }
    private val head = HeadView(ui)
    private val strip = StripView(ui)
    private val notices = NoticesView(ui, session)
    private val lone = FrameLayout(context)
    private val blocks = BlockList(ui)
    private val body = context.column()
    private val rest = Flow(context, REST_GAP_DP, fills = true)
    private var restShown = emptyList<Button>()
    private val scroll = ScrollView(context)
    private val foot = FootView(ui, openMenu)
    private val keys = NumberKeys(ui)
    private var place = ""
    private var hasKeyboard = false

    /** The width for which it was decided whether head and strip stay, pixels. */
    private var decidedPx = 0

    private val inside = context.column()
    private val top = context.column()

    init {
        orientation = VERTICAL
        setBackgroundColor(ui.palette.ground)
        // Takes the focus when a field is left, so that the next field does not.
        isFocusableInTouchMode = true
        descendantFocusability = FOCUS_BEFORE_DESCENDANTS
        defaultFocusHighlightEnabled = false
        addView(bar, LayoutParams(MATCH, 0))
        top.addView(head, context.below())
        top.addView(strip, context.below())
        inside.addView(top, context.below())
        inside.addView(lone, context.below())
        body.pad(16, 16, 24)
        body.addView(notices, context.below().apply { bottomMargin = dp(GAP_DP) })
        body.addView(blocks, context.below())
        body.addView(rest, context.below(GAP_DP))
        val column = Column(context, dp(MEASURE_DP))
        column.addView(body, FrameLayout.LayoutParams(MATCH, WRAP, Gravity.TOP))
        inside.addView(column, context.below())
        scroll.isFillViewport = true
        scroll.isSmoothScrollingEnabled = false
        scroll.addOnLayoutChangeListener { _, _, top, _, bottom, _, topBefore, _, bottomBefore ->
            if (bottom - top < bottomBefore - topBefore) scroll.post(::bringField)
        }
        scroll.addView(inside, FrameLayout.LayoutParams(MATCH, WRAP))
        addView(scroll, LayoutParams(MATCH, 0, 1f))
        addView(foot, context.below())
        addView(keys, context.below())
    }

    /** Shows a screen. [turned] is told before anything of another screen than the last one is drawn. */
    fun show(screen: Screen, turned: () -> Unit) {
        val wait = loneDwell(screen.blocks)
        // A waiting time that begins is a new screen: its clock stands above, where whoever pressed 'start' may not look.
        val here = "${screen.place} ${screen.unit.orEmpty()} ${stepOf(screen)} ${if (wait == null) "" else "waits"}"
        val isTurned = here != place
        if (isTurned) {
            if (place.isNotEmpty()) scrolled[place] = scroll.scrollY
            // What is typed in a field of the last screen is meant: leaving it says so.
            findFocus()?.clearFocus()
            turned()
        }
        place = here
        val isOther = listOf(head.show(screen), strip.show(screen.strip)).any { it }
        if (isOther || decidedPx != width) stayOrGo()
        val isNew = notices.show(screen.notices)
        showLone(wait, screen)
        blocks.show(screen.blocks, wait)
        foot.show(screen)
        showRest(screen)
        footOrNot()
        if (isTurned) arrive(screen) else if (isNew && findFocus() !is EditText) scroll.scrollTo(0, 0)
    }

    /** Where there is little room the foot holds its first button only. */
    private fun showRest(screen: Screen) {
        val wanted = if (context.isTight()) screen.foot.drop(1) else emptyList()
        if (wanted == restShown) return
        restShown = wanted
        rest.removeAllViews()
        for (button in wanted) rest.addView(ui.button(button))
    }

    /** Head and strip stay while the rest is pushed, where they leave enough room for it. */
    private fun stayOrGo() {
        decidedPx = width
        val size = resources.displayMetrics
        val wide = MeasureSpec.makeMeasureSpec(if (width > 0) width else size.widthPixels, MeasureSpec.EXACTLY)
        top.measure(wide, MeasureSpec.makeMeasureSpec(0, MeasureSpec.UNSPECIFIED))
        val holder = if (top.measuredHeight <= size.heightPixels * STAYS_SHARE) this else inside
        if (top.parent === holder) return
        (top.parent as LinearLayout).removeView(top)
        holder.addView(top, if (holder === this) 1 else 0, context.below())
    }

    private fun showLone(wait: Block.Dwell?, screen: Screen) {
        val shown = lone.getChildAt(0) as? DwellBlock
        if (wait == null) return lone.removeAllViews()
        val view = shown ?: DwellBlock(ui).also { lone.addView(it, FrameLayout.LayoutParams(MATCH, WRAP)) }
        view.place = if (onlyToWait(screen.blocks)) DwellPlace.ALONE else DwellPlace.AHEAD
        view.take(wait)
    }

    /** Where one was on this screen; a screen reader begins at its title. */
    private fun arrive(screen: Screen) {
        val down = scrolled[place]
        // Where there is little room the clock comes before head and strip.
        scroll.post { scroll.scrollTo(0, if (down == 0 && lone.childCount > 0 && context.isTight()) lone.top else down) }
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.P) {
            accessibilityPaneTitle = listOf(screen.title, screen.subtitle).filter { it.isNotEmpty() }.joinToString(", ")
        }
        head.title?.let { title ->
            title.sendAccessibilityEvent(AccessibilityEvent.TYPE_VIEW_FOCUSED)
            title.performAccessibilityAction(AccessibilityNodeInfo.ACTION_ACCESSIBILITY_FOCUS, null)
        }
    }

    /** The screen goes away with its activity: where it was read to is kept. */
    fun leave() {
        if (place.isNotEmpty()) scrolled[place] = scroll.scrollY
    }

    /** The time went on. */
    fun tick() {
        blocks.tick()
        (lone.getChildAt(0) as? DwellBlock)?.tick()
    }

    /** Shows the keys for a number, in place of the foot. */
    fun numberKeysFor(input: EditText?) {
        keys.showFor(input)
        footOrNot()
    }

    /** Keys or a keyboard took room: the field that is typed in is brought above them, with its words. */
    private fun bringField() {
        val field = findFocus() as? EditText ?: return
        field.requestRectangleOnScreen(Rect(0, -dp(ABOVE_DP), field.width, field.height), true)
    }

    /** Keeps clear of the system's bars and the keyboard, pixels. */
    fun inset(left: Int, top: Int, right: Int, bottom: Int, keyboard: Boolean) {
        setPadding(left, 0, right, if (keyboard) bottom else 0)
        bar.layoutParams = LayoutParams(MATCH, top)
        foot.setPadding(0, 0, 0, if (keyboard) 0 else bottom)
        keys.setPadding(0, 0, 0, if (keyboard) 0 else bottom)
        hasKeyboard = keyboard
        footOrNot()
    }

    private fun footOrNot() {
        val isThere = foot.hasWays && keys.visibility != VISIBLE && !hasKeyboard
        foot.visibility = if (isThere) VISIBLE else GONE
    }

    private companion object {
        /** What stays in sight above a field that is typed in: its label, dp. */
        const val ABOVE_DP = 48

        const val REST_GAP_DP = 10

        /** How much of the window head and strip may take and stay. */
        const val STAYS_SHARE = 0.27f

        /** The one step that a screen is about: the next step under the same name is another screen. */
        fun stepOf(screen: Screen): String = screen.blocks.filterIsInstance<Block.Step>().singleOrNull()?.id.orEmpty()
    }
}
