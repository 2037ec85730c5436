package app.coilside.frame

import android.annotation.SuppressLint
import android.view.Gravity
import android.view.View
import android.widget.LinearLayout
import android.widget.TextView
import app.coilside.blocks.Ui
import app.coilside.view.Flow
import app.coilside.view.Type
import app.coilside.view.WRAP
import app.coilside.view.Weight
import app.coilside.view.below
import app.coilside.view.beside
import app.coilside.view.boundSides
import app.coilside.view.column
import app.coilside.view.digits
import app.coilside.view.dp
import app.coilside.view.glyph
import app.coilside.view.glyphOf
import app.coilside.view.heading
import app.coilside.view.isLow
import app.coilside.view.pad
import app.coilside.view.row
import app.coilside.view.surface
import app.coilside.view.words
import coilside.Screen
import coilside.Tone

/** What stands above every screen: the unit's letter, the titles, how far the visit is, and what still has to be sent. */
@SuppressLint("ViewConstructor")
class HeadView(private val ui: Ui) : LinearLayout(ui.context) {
    private var shown: Any? = null

    /** Where a screen reader begins on a new screen. */
    var title: TextView? = null
        private set

    init {
        orientation = VERTICAL
        setBackgroundColor(ui.palette.top)
        pad(SIDE_DP, if (context.isLow()) 4 else 10, if (context.isLow()) 6 else 12)
    }

    override fun onMeasure(widthSpec: Int, heightSpec: Int) {
        boundSides(widthSpec, SIDE_DP)
        super.onMeasure(widthSpec, heightSpec)
    }

    /** Returns whether anything of it changed. */
    fun show(screen: Screen): Boolean {
        val wanted = listOf(screen.unit, screen.title, screen.subtitle, screen.progress, screen.outbox)
        if (wanted == shown) return false
        shown = wanted
        removeAllViews()
        addView(titles(screen), context.below())
        val progress = screen.progress
        if (progress != null && !context.isLow()) {
            addView(Comb(context, ui.palette, progress.done.toInt(), progress.total.toInt()), context.below(10))
        }
        val state = Flow(context, STATE_GAP_DP)
        progress?.let { state.addView(context.words(it.text, ui.palette.softOnTop, Type.SMALL).digits()) }
        state.addView(outbox(screen))
        addView(state, context.below(if (context.isLow()) 2 else 8))
        return true
    }

    private fun titles(screen: Screen): View = context.row().apply {
        gravity = Gravity.CENTER_VERTICAL
        screen.unit?.let { addView(ui.unitLetter(it, ui.palette.onTop, ui.palette.tooth)) }
        val names = context.column()
        val name = context.words(screen.title, ui.palette.onTop, Type.TITLE, Weight.BOLD).heading()
        name.isFocusable = false
        title = name
        names.addView(name, context.below())
        if (screen.subtitle.isNotEmpty()) {
            names.addView(context.words(screen.subtitle, ui.palette.softOnTop, SUBTITLE_SP), context.below())
        }
        addView(names, context.beside(if (screen.unit == null) 0 else 12))
    }

    private fun outbox(screen: Screen): View = context.row().apply {
        gravity = Gravity.CENTER_VERTICAL
        val live = screen.outbox
        val urgent = live.tone == Tone.ATTENTION || live.tone == Tone.DANGER
        val color = if (urgent) ui.palette.warnOnTop else ui.palette.softOnTop
        addView(context.glyph(glyphOf(live.tone), color, GLYPH_DP))
        val weight = if (urgent) Weight.BOLD else Weight.MEDIUM
        addView(context.words("${live.label}: ${live.value}", color, Type.SMALL, weight), context.beside(4, weight = 0f))
    }

    private companion object {
        const val SIDE_DP = 16
        const val STATE_GAP_DP = 14
        const val SUBTITLE_SP = 17f
        const val GLYPH_DP = 20
    }
}

/** The letter of what a screen or a photograph belongs to. */
fun Ui.unitLetter(letter: String, ink: Int, edge: Int): TextView = context.words(letter, ink, LETTER_SP, Weight.BOLD).apply {
    background = context.surface(android.graphics.Color.TRANSPARENT, edge, 3, LETTER_ROUND_DP)
    minWidth = dp(LETTER_DP)
    minHeight = dp(LETTER_DP)
    textAlignment = View.TEXT_ALIGNMENT_GRAVITY
    gravity = Gravity.CENTER
    includeFontPadding = false
    pad(8, 4)
    contentDescription = "${words.say("unit")} $letter"
    layoutParams = LinearLayout.LayoutParams(WRAP, WRAP)
}

private const val LETTER_SP = 30f
private const val LETTER_DP = 52
private const val LETTER_ROUND_DP = 12f
