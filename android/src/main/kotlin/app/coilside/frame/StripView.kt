package app.coilside.frame

import android.annotation.SuppressLint
import android.view.Gravity
import android.view.View
import android.widget.LinearLayout
import app.coilside.blocks.Ruled
import app.coilside.blocks.Ui
import app.coilside.view.Flow
import app.coilside.view.Weight
import app.coilside.view.below
import app.coilside.view.beside
import app.coilside.view.boundSides
import app.coilside.view.dp
import app.coilside.view.glyph
import app.coilside.view.glyphOf
import app.coilside.view.pad
import app.coilside.view.row
import app.coilside.view.words
import coilside.Live
import coilside.Tone

/** The facts that matter for safety, live. */
@SuppressLint("ViewConstructor")
class StripView(private val ui: Ui) : LinearLayout(ui.context) {
    private var shown: List<Live>? = null
    private var facts: Flow? = null

    init {
        orientation = VERTICAL
        setBackgroundColor(ui.palette.paper)
        contentDescription = null
    }

    override fun onMeasure(widthSpec: Int, heightSpec: Int) {
        facts?.boundSides(widthSpec, SIDE_DP)
        super.onMeasure(widthSpec, heightSpec)
    }

    /** Returns whether anything of it changed. */
    fun show(strip: List<Live>): Boolean {
        if (strip == shown) return false
        shown = strip
        removeAllViews()
        visibility = if (strip.isEmpty()) GONE else VISIBLE
        if (strip.isEmpty()) return true
        val facts = Flow(context, GAP_DP, downDp = DOWN_DP)
        for (live in strip) facts.addView(fact(live))
        facts.pad(SIDE_DP, 8, 10)
        this.facts = facts
        addView(facts, context.below())
        addView(View(context).apply { background = Ruled(ui.palette.line, dp(1)) }, context.below().apply { height = dp(1) })
        return true
    }

    /** The value goes below what it is of, where there is no room beside it. */
    private fun fact(live: Live): View = Flow(context, BESIDE_DP, downDp = 0).apply {
        val color = if (live.tone == Tone.PLAIN) ui.palette.ink else ui.palette.words(live.tone)
        addView(context.words(live.label, ui.palette.soft, LABEL_SP).apply { pad(0, 1) })
        val value = context.row()
        value.gravity = Gravity.CENTER_VERTICAL
        if (live.tone != Tone.PLAIN) {
            value.addView(context.glyph(glyphOf(live.tone), color, GLYPH_DP), LayoutParams(dp(GLYPH_DP), dp(GLYPH_DP)).apply { marginEnd = dp(2) })
        }
        value.addView(context.words(live.value, color, VALUE_SP, Weight.BOLD), context.beside(weight = 0f))
        addView(value)
    }

    private companion object {
        const val SIDE_DP = 16
        const val GAP_DP = 16
        const val DOWN_DP = 4
        const val BESIDE_DP = 5
        const val LABEL_SP = 14f
        const val VALUE_SP = 16f
        const val GLYPH_DP = 18
    }
}
