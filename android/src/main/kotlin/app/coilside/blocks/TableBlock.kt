package app.coilside.blocks

import android.annotation.SuppressLint
import android.view.Gravity
import android.view.View
import android.widget.TableLayout
import android.widget.TableRow
import android.widget.TextView
import app.coilside.R
import app.coilside.view.Flow
import app.coilside.view.Type
import app.coilside.view.WRAP
import app.coilside.view.Weight
import app.coilside.view.below
import app.coilside.view.column
import app.coilside.view.digits
import app.coilside.view.dp
import app.coilside.view.heading
import app.coilside.view.pad
import app.coilside.view.surface
import app.coilside.view.words
import coilside.Block

/**
 * Rows and columns. The first column names the row. Where the columns do not fit beside each other, the values of a row stand
 * below its name, each with its column: nobody pushes a page sideways with a glove.
 */
@SuppressLint("ViewConstructor")
class TableBlock(ui: Ui) : BlockView<Block.Table>(ui) {
    private var beside: TableLayout? = null
    private var body: View? = null
    private var decidedPx = -1

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
        beside = table
        body = null
        decidedPx = -1
    }

    override fun onMeasure(widthSpec: Int, heightSpec: Int) {
        val wide = MeasureSpec.getSize(widthSpec) - paddingLeft - paddingRight
        if (wide != decidedPx) decide(wide)
        super.onMeasure(widthSpec, heightSpec)
    }

    /** Once for each width: columns, or a list. */
    private fun decide(widePx: Int) {
        decidedPx = widePx
        val table = beside ?: return
        val free = MeasureSpec.makeMeasureSpec(0, MeasureSpec.UNSPECIFIED)
        table.measure(free, free)
        val block = getTag(R.id.block) as? Block.Table
        val fitting = if (table.measuredWidth <= widePx || block == null) table else list(block)
        body?.let(::removeView)
        addView(fitting, context.below())
        body = fitting
    }

    private fun list(block: Block.Table) = context.column().apply {
        for (cells in block.rows) addView(listed(cells, block.columns), context.below())
    }

    /** A row's name with its values below. */
    private fun listed(cells: List<String>, columns: List<String>) = context.column().apply {
        background = Ruled(ui.palette.line, dp(1))
        pad(16, 9)
        cells.firstOrNull()?.let { addView(context.words(it, ui.palette.ink, TABLE_SP, Weight.BOLD), context.below()) }
        for ((at, text) in cells.withIndex().drop(1)) {
            val value = Flow(context, 8, downDp = 0).apply {
                columns.getOrNull(at)?.takeIf { it.isNotEmpty() }?.let { addView(context.words(it, ui.palette.soft, Type.SMALL, Weight.MEDIUM)) }
                addView(context.words(text, ui.palette.ink, TABLE_SP).digits())
            }
            addView(value, context.below(2))
        }
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
