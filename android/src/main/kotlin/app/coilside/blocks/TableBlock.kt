package app.coilside.blocks

import android.annotation.SuppressLint
import android.view.Gravity
import android.widget.HorizontalScrollView
import android.widget.LinearLayout
import android.widget.TableLayout
import android.widget.TableRow
import android.widget.TextView
import app.coilside.view.MATCH
import app.coilside.view.Type
import app.coilside.view.WRAP
import app.coilside.view.Weight
import app.coilside.view.below
import app.coilside.view.digits
import app.coilside.view.dp
import app.coilside.view.heading
import app.coilside.view.pad
import app.coilside.view.surface
import app.coilside.view.words
import coilside.Block

/** Rows and columns. The first column names the row; what is wider than the screen is pushed sideways. */
@SuppressLint("ViewConstructor")
class TableBlock(ui: Ui) : BlockView<Block.Table>(ui) {
    override fun show(block: Block.Table) {
        removeAllViews()
        val palette = ui.palette
        background = context.surface(palette.paper, palette.line, 1)
        setPadding(dp(1), 0, dp(1), dp(6))
        if (block.caption.isNotEmpty()) {
            val caption = context.words(block.caption, palette.ink, weight = Weight.BOLD).heading()
            caption.pad(16, 14, 6)
            addView(caption, context.below())
        }
        val table = TableLayout(context)
        if (block.columns.any { it.isNotEmpty() }) table.addView(row(block.columns, head = true, block.columns))
        for (cells in block.rows) table.addView(row(cells, head = false, block.columns))
        val sideways = HorizontalScrollView(context).apply {
            isFillViewport = true
            isScrollbarFadingEnabled = false
            scrollBarStyle = SCROLLBARS_INSIDE_OVERLAY
            contentDescription = block.caption
            addView(table, LayoutParams(MATCH, WRAP))
        }
        addView(sideways, context.below())
    }

    private fun row(cells: List<String>, head: Boolean, columns: List<String>) = TableRow(context).apply {
        gravity = Gravity.TOP
        if (!head) background = Ruled(ui.palette.line, dp(1))
        cells.forEachIndexed { at, text ->
            val cell = cell(text, head, at == 0, at == cells.lastIndex)
            // A screen reader hears of which column a value is.
            if (!head && at > 0) columns.getOrNull(at)?.takeIf { it.isNotEmpty() }?.let { cell.contentDescription = "$it: $text" }
            addView(cell, TableRow.LayoutParams(WRAP, WRAP, if (at == 0) 1f else 0f))
        }
    }

    private fun cell(text: String, head: Boolean, first: Boolean, last: Boolean): TextView {
        val palette = ui.palette
        val weight = if (head || first) Weight.MEDIUM else Weight.PLAIN
        return context.words(text, if (head) palette.soft else palette.ink, if (head) Type.SMALL else TABLE_SP, weight).digits().apply {
            setPaddingRelative(dp(if (first) 16 else 6), dp(9), dp(if (last) 16 else 8), dp(9))
            // The names give way, so that the values are seen without pushing.
            maxWidth = dp(if (first) (resources.configuration.screenWidthDp * NAME_SHARE).coerceAtMost(NAME_DP) else VALUE_DP)
            textAlignment = if (first) TEXT_ALIGNMENT_VIEW_START else TEXT_ALIGNMENT_VIEW_END
        }
    }

    private companion object {
        const val TABLE_SP = 17f
        const val NAME_DP = 420f
        const val NAME_SHARE = 0.44f
        const val VALUE_DP = 240f
    }
}
