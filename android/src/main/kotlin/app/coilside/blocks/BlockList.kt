package app.coilside.blocks

import android.annotation.SuppressLint
import android.view.View
import android.widget.LinearLayout
import app.coilside.view.GAP_DP
import app.coilside.R
import app.coilside.view.below
import app.coilside.view.dp
import coilside.Block

/**
 * Blocks below each other. A block that did not change keeps its view, so that a finger, the focus and what is half typed
 * stay where they are.
 */
@SuppressLint("ViewConstructor")
class BlockList(private val ui: Ui, private val gapDp: Int = GAP_DP) : LinearLayout(ui.context) {
    private class Entry(val key: Any, val view: BlockView<Block>)

    private var entries = emptyList<Entry>()

    init {
        orientation = VERTICAL
    }

    /** Shows [blocks] in order, but for [except], which is shown elsewhere. */
    fun show(blocks: List<Block>, except: Block? = null) {
        val old = entries.groupByTo(HashMap(), { it.key }, { it })
        entries = blocks.filter { it !== except }.map { block ->
            val key = keyOf(block)
            val kept = old[key]?.removeFirstOrNull()
            (kept ?: Entry(key, viewOf(block, ui))).also { it.view.take(block) }
        }
        for (gone in old.values.flatten()) removeView(gone.view)
        entries.forEachIndexed { at, entry -> place(entry.view, at) }
        for (at in 0 until childCount) space(at)
    }

    /** The time went on. */
    fun tick() = entries.forEach { it.view.tick() }

    private fun place(view: View, at: Int) {
        if (getChildAt(at) === view) return
        if (view.parent === this) removeView(view)
        addView(view, at, context.below())
    }

    /** Lines of running text stand nearer to each other than other blocks. */
    private fun space(at: Int) {
        val above = getChildAt(at - 1)
        val gap = if (at == 0) 0 else if (isLine(above) && isLine(getChildAt(at))) LINE_GAP_DP else gapDp
        val params = getChildAt(at).layoutParams as LayoutParams
        if (params.topMargin == dp(gap)) return
        params.topMargin = dp(gap)
        getChildAt(at).layoutParams = params
    }

    private fun isLine(view: View?): Boolean = ((view as? TextBlock)?.getTag(R.id.block) as? Block.Text)?.level == 0.toUByte()

    private companion object {
        const val LINE_GAP_DP = 8

        /** What makes two blocks the same one at two moments. */
        fun keyOf(block: Block): Any = when (block) {
            is Block.Step -> "step" to block.id
            is Block.Choice -> "choice" to block.field
            is Block.Number -> "number" to block.field
            is Block.TextEntry -> "entry" to block.field
            is Block.Ink -> "ink" to block.field
            is Block.Shot -> "shot" to block.slot
            is Block.Dwell -> "dwell" to block.title
            is Block.Check -> "check" to block.press
            else -> block
        }

        @Suppress("UNCHECKED_CAST")
        fun viewOf(block: Block, ui: Ui): BlockView<Block> = when (block) {
            is Block.Text -> TextBlock(ui)
            is Block.Caution -> CautionBlock(ui)
            is Block.Step -> StepBlock(ui)
            is Block.Check -> CheckBlock(ui)
            is Block.Choice -> ChoiceBlock(ui)
            is Block.Number -> NumberBlock(ui)
            is Block.TextEntry -> EntryBlock(ui)
            is Block.Ink -> InkBlock(ui)
            is Block.Shot -> ShotBlock(ui)
            is Block.Dwell -> DwellBlock(ui)
            is Block.Mix -> MixBlock(ui)
            is Block.Table -> TableBlock(ui)
            is Block.Chart -> ChartBlock(ui)
            is Block.Plot -> PlotBlock(ui)
            is Block.Link -> LinkBlock(ui)
            is Block.Button -> ButtonBlock(ui)
        } as BlockView<Block>
    }
}
