package app.coilside.blocks

import android.annotation.SuppressLint
import android.view.Gravity
import android.widget.LinearLayout
import app.coilside.view.Flow
import app.coilside.view.Type
import app.coilside.view.Weight
import app.coilside.view.below
import app.coilside.view.beside
import app.coilside.view.dp
import app.coilside.view.heading
import app.coilside.view.pad
import app.coilside.view.row
import app.coilside.view.surface
import app.coilside.view.words
import coilside.Block

/** Lines over two axes, with what each stands for below. */
@SuppressLint("ViewConstructor")
class PlotBlock(ui: Ui) : BlockView<Block.Plot>(ui) {
    override fun show(block: Block.Plot) {
        removeAllViews()
        val palette = ui.palette
        val plot = block.plot
        background = context.surface(palette.paper, palette.line, 1)
        pad(16, 14, 18)
        addView(context.words(plot.caption, palette.ink, weight = Weight.BOLD).heading(), context.below())
        addView(context.words(plot.yTitle, palette.soft, Type.SMALL, Weight.MEDIUM), context.below(10))
        addView(PlotView(context, palette, plot), context.below(4))
        val across = context.words(plot.xTitle, palette.soft, Type.SMALL, Weight.MEDIUM)
        across.textAlignment = TEXT_ALIGNMENT_VIEW_END
        addView(across, context.below(2))
        val named = plot.lines.distinctBy { it.label to it.style }
        val keys = Flow(context, 14)
        for (line in named) {
            keys.addView(
                context.row().apply {
                    gravity = Gravity.CENTER_VERTICAL
                    addView(PlotKey(context, palette, line.style), LinearLayout.LayoutParams(dp(44), dp(12)))
                    addView(context.words(line.label, palette.ink, Type.SMALL), context.beside(8, weight = 0f))
                },
            )
        }
        addView(keys, context.below(10))
    }
}
