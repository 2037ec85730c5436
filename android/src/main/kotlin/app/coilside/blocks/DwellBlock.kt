package app.coilside.blocks

import android.annotation.SuppressLint
import android.view.Gravity
import android.view.View
import android.widget.TextView
import app.coilside.R
import app.coilside.view.Flow
import app.coilside.view.MEASURE_DP
import app.coilside.view.PressButton
import app.coilside.view.Type
import app.coilside.view.Weight
import app.coilside.view.below
import app.coilside.view.beside
import app.coilside.view.boundSides
import app.coilside.view.column
import app.coilside.view.digits
import app.coilside.view.dp
import app.coilside.view.glyph
import app.coilside.view.heading
import app.coilside.view.pad
import app.coilside.view.row
import app.coilside.view.surface
import app.coilside.view.words
import coilside.Block
import coilside.DwellState

/** Where a waiting time stands: among others, on top of them, or with nothing else to do, for two metres. */
enum class DwellPlace { AMONG, AHEAD, ALONE }

/** A waiting time, with a clock that runs. */
@SuppressLint("ViewConstructor")
class DwellBlock(ui: Ui) : BlockView<Block.Dwell>(ui) {
    /** Set before the block is. */
    var place = DwellPlace.AMONG
    private var shown: Block.Dwell? = null
    private var drawnFor: Any? = null
    private var digits: TextView? = null
    private var digitsWords: TextView? = null
    private var bar: BarView? = null

    override fun onMeasure(widthSpec: Int, heightSpec: Int) {
        if (place != DwellPlace.AMONG) boundSides(widthSpec, SIDE_DP)
        super.onMeasure(widthSpec, heightSpec)
    }

    override fun isStale(): Boolean = drawnFor != look()

    private fun look(): Any = listOf(place, ui.alarm?.text, ui.alarm?.allowLabel)

    override fun show(block: Block.Dwell) {
        drawnFor = look()
        shown = block
        removeAllViews()
        val palette = ui.palette
        val (fill, ink) = when (block.state) {
            DwellState.RUNNING -> palette.dwell to palette.onDwell
            DwellState.READY -> palette.dwellReady to palette.onDwell
            DwellState.OVER -> palette.dwellOver to palette.onDwell
            DwellState.WAITING, DwellState.ENDED -> palette.paper to palette.ink
        }
        val round = if (place == DwellPlace.AMONG) app.coilside.view.ROUND_DP else 0f
        background = context.surface(fill, if (block.runs) fill else palette.line, 2, round)
        pad(SIDE_DP, if (place == DwellPlace.ALONE) 20 else 16)
        head(block, ink)
        if (block.runs) clock(ink)
        if (block.runs || block.state == DwellState.WAITING) limits(block, ink)
        // While the clock runs its digits say it.
        val big = if (place == DwellPlace.ALONE) Type.HEADING else Type.STRONG
        if (block.state != DwellState.RUNNING) addView(context.words(block.stateText, ink, big, Weight.MEDIUM), context.below(12))
        if (block.runs && block.then.isNotEmpty()) then(block.then, ink, big)
        if (block.runs) ui.alarm?.let { alarm(it, ink) }
        tick()
    }

    private fun head(block: Block.Dwell, ink: Int) {
        val mark = when (block.state) {
            DwellState.WAITING -> R.drawable.glyph_open
            DwellState.RUNNING -> R.drawable.glyph_running
            DwellState.OVER -> R.drawable.glyph_danger
            DwellState.READY, DwellState.ENDED -> R.drawable.glyph_done
        }
        val row = context.row().apply { gravity = Gravity.CENTER_VERTICAL }
        row.addView(context.glyph(mark, ink, MARK_DP))
        row.addView(context.words(block.title, ink, Type.STRONG, Weight.BOLD).heading(), context.beside(10))
        addView(row, context.below())
    }

    /** The digits fill the width where there is nothing else to do; they do not grow with the size of words. */
    private fun clock(ink: Int) {
        val digits = context.words("", ink, weight = Weight.BOLD).digits()
        val sizeDp = if (place == DwellPlace.ALONE) aloneDp(1f) else AMONG_DP
        digits.setTextSize(android.util.TypedValue.COMPLEX_UNIT_DIP, sizeDp)
        digits.includeFontPadding = false
        digits.maxLines = 1
        digits.letterSpacing = -0.02f
        val words = context.words("", ink, if (place == DwellPlace.ALONE) Type.HEADING else Type.STRONG, Weight.MEDIUM)
        if (place == DwellPlace.ALONE) {
            digits.textAlignment = View.TEXT_ALIGNMENT_CENTER
            words.textAlignment = View.TEXT_ALIGNMENT_CENTER
            addView(digits, context.below(8))
            addView(words, context.below(2))
        } else {
            val both = Flow(context, 14)
            both.addView(digits)
            both.addView(words)
            addView(both, context.below(8))
        }
        this.digits = digits
        digitsWords = words
        bar = BarView(context, ink).also { addView(it, context.below(12)) }
    }

    private fun limits(block: Block.Dwell, ink: Int) {
        if (block.leastClock.isEmpty() && block.mostClock.isEmpty()) return
        val both = Flow(context, 16, fills = true, leastDp = LIMIT_DP)
        val size = if (place == DwellPlace.ALONE) ALONE_LIMIT_SP else Type.AMOUNT
        for ((key, clock) in listOf("least" to block.leastClock, "most" to block.mostClock)) {
            if (clock.isEmpty()) continue
            val one = context.column()
            one.addView(context.words(ui.words.say(key), ink, Type.SMALL), context.below())
            one.addView(context.words(clock, ink, size, Weight.BOLD).digits(), context.below())
            both.addView(one)
        }
        addView(both, context.below(12))
    }

    private fun then(text: String, ink: Int, size: Float) {
        val line = View(context).apply {
            setBackgroundColor(ink)
            alpha = LINE_ALPHA
        }
        addView(line, context.below(14).apply { height = dp(2) })
        addView(context.words(ui.words.say("then"), ink, Type.SMALL), context.below(10))
        addView(context.words(text, ink, size, Weight.MEDIUM), context.below(2))
    }

    private fun alarm(line: AlarmLine, ink: Int) {
        addView(ui.marked(line.text, ink, R.drawable.glyph_bell, Type.SMALL, Weight.PLAIN), context.below(14))
        val (label, allow) = (line.allowLabel ?: return) to (line.allow ?: return)
        val button = PressButton(context, ui.palette, label, fire = allow)
        button.setTag(R.id.role, "alarm-allow")
        addView(button, context.below(10))
    }

    override fun tick() {
        val block = shown?.takeIf { it.runs } ?: return
        val clock = clockOf(block, ui.nowMs)
        digits?.let { if (it.text.toString() != clock.digits) it.text = clock.digits }
        digitsWords?.let { words -> ui.words.say(clock.wordsKey).let { if (words.text != it) words.text = it } }
        bar?.share = shareOf(block, ui.nowMs)
        if (place == DwellPlace.ALONE) fit(clock.digits.length)
    }

    /** Hours and a sign make the digits longer. */
    private fun fit(length: Int) {
        val scale = if (length > SHORT_CHARS) SHORT_CHARS.toFloat() / length else 1f
        digits?.setTextSize(android.util.TypedValue.COMPLEX_UNIT_DIP, aloneDp(scale))
    }

    /** How high the digits are that fill the width, dp; [scale]: of those that are usual, how many are. */
    private fun aloneDp(scale: Float): Float {
        val size = context.resources.displayMetrics
        val (wide, high) = size.widthPixels / size.density to size.heightPixels / size.density
        return minOf(wide.coerceAtMost(MEASURE_DP.toFloat()) * ALONE_WIDE * scale, high * ALONE_HIGH, ALONE_MAX_DP)
    }

    private companion object {
        const val SIDE_DP = 16
        const val MARK_DP = 28
        const val AMONG_DP = 64f
        const val ALONE_WIDE = 0.32f
        const val ALONE_HIGH = 0.38f
        const val ALONE_MAX_DP = 336f
        const val ALONE_LIMIT_SP = 40f
        const val LIMIT_DP = 136
        const val LINE_ALPHA = 0.45f
        const val SHORT_CHARS = 5
    }
}
