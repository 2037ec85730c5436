package app.coilside.blocks

import android.annotation.SuppressLint
import android.graphics.Color
import android.view.Gravity
import android.view.View
import app.coilside.R
import app.coilside.view.Flow
import app.coilside.view.Type
import app.coilside.view.Weight
import app.coilside.view.below
import app.coilside.view.beside
import app.coilside.view.column
import app.coilside.view.digits
import app.coilside.view.dp
import app.coilside.view.heading
import app.coilside.view.pad
import app.coilside.view.row
import app.coilside.view.surface
import app.coilside.view.words
import coilside.Block
import coilside.MixRow

/** A dilution to prepare: how much of what, and in which order. */
@SuppressLint("ViewConstructor")
class MixBlock(ui: Ui) : BlockView<Block.Mix>(ui) {
    override fun show(block: Block.Mix) {
        removeAllViews()
        val palette = ui.palette
        background = context.surface(palette.paper, palette.lead, 2)
        pad(16, 16)
        addView(context.words(block.title, palette.ink, Type.STRONG, Weight.BOLD).heading(), context.below())
        for (row in block.rows) {
            addView(amount(row), context.below(8))
            addView(View(context).apply { setBackgroundColor(palette.line) }, context.below(8).apply { height = dp(1) })
        }
        block.order.forEachIndexed { at, line -> addView(poured(at + 1, line), context.below(if (at == 0) 14 else 10)) }
        block.warning?.let { warning ->
            val box = context.column().apply {
                background = context.surface(palette.dangerWash, palette.dangerEdge, 2, app.coilside.view.ROUND_SMALL_DP)
                pad(14, 12)
                addView(ui.marked(warning, palette.danger, R.drawable.glyph_danger), context.below())
            }
            addView(box, context.below(14))
        }
    }

    /** The words and the amount side by side, below each other where there is no room. */
    private fun amount(row: MixRow) = Flow(context, 12, fills = false).apply {
        addView(context.words(row.label, ui.palette.ink))
        addView(context.words(row.amount, ui.palette.ink, Type.AMOUNT, Weight.BOLD).digits())
    }

    private fun poured(number: Int, line: String) = context.row().apply {
        gravity = Gravity.TOP
        val mark = context.words(number.toString(), ui.palette.onLead, Type.BODY, Weight.BOLD)
        mark.background = context.surface(ui.palette.lead, Color.TRANSPARENT, roundDp = MARK_DP)
        mark.minimumWidth = dp(MARK_DP)
        mark.minimumHeight = dp(MARK_DP)
        mark.textAlignment = View.TEXT_ALIGNMENT_GRAVITY
        mark.gravity = Gravity.CENTER
        mark.pad(6, 2)
        addView(mark)
        addView(context.words(line, ui.palette.ink, weight = Weight.MEDIUM), context.beside(12).apply { topMargin = dp(4) })
    }

    private companion object {
        const val MARK_DP = 34f
    }
}
