package app.coilside.blocks

import android.annotation.SuppressLint
import app.coilside.view.Flow
import app.coilside.view.Type
import app.coilside.view.Weight
import app.coilside.view.below
import app.coilside.view.column
import app.coilside.view.digits
import app.coilside.view.heading
import app.coilside.view.pad
import app.coilside.view.surface
import app.coilside.view.words
import coilside.Block

/** Bars with their doubt. The words beside each bar say the same. */
@SuppressLint("ViewConstructor")
class ChartBlock(ui: Ui) : BlockView<Block.Chart>(ui) {
    override fun show(block: Block.Chart) {
        removeAllViews()
        val palette = ui.palette
        background = context.surface(palette.paper, palette.line, 1)
        pad(16, 14, 18)
        val caption = if (block.unit.isEmpty()) block.caption else "${block.caption} (${block.unit})"
        addView(context.words(caption, palette.ink, weight = Weight.BOLD).heading(), context.below())
        val ends = block.bars.flatMap { listOf(it.value - it.doubt, it.value + it.doubt) }
        val low = minOf(0.0, ends.minOrNull() ?: 0.0)
        val high = maxOf(0.0, ends.maxOrNull() ?: 0.0)
        val scale = ChartScale(low, (high - low).takeIf { it > 0 } ?: 1.0)
        block.bars.forEachIndexed { at, bar ->
            val one = context.column()
            val named = Flow(context, 12)
            named.addView(context.words(bar.label, palette.ink))
            named.addView(context.words(bar.text, palette.ink, Type.BODY, Weight.BOLD).digits())
            one.addView(named, context.below())
            one.addView(ChartBar(context, palette, bar, at, scale), context.below(4))
            addView(one, context.below(14))
        }
    }
}

/** Where a value lies along a bar. */
class ChartScale(private val low: Double, private val span: Double) {
    /** 0…1. */
    fun at(value: Double): Float = ((value - low) / span).toFloat()
}
