package app.coilside.blocks

import android.annotation.SuppressLint
import app.coilside.R
import app.coilside.view.Flow
import app.coilside.view.Type
import app.coilside.view.Weight
import app.coilside.view.below
import app.coilside.view.column
import app.coilside.view.words
import coilside.Action
import coilside.Block

/** One of several. Short ones stand side by side. */
@SuppressLint("ViewConstructor")
class ChoiceBlock(ui: Ui) : BlockView<Block.Choice>(ui) {
    override fun show(block: Block.Choice) {
        removeAllViews()
        setTag(R.id.field, block.field)
        addView(context.words(block.label, ui.palette.ink, Type.BODY, Weight.BOLD), context.below())
        val short = block.options.all { it.label.length <= SHORT_CHARS }
        val options = if (short) Flow(context, GAP, fills = true, leastDp = SIDE_DP) else context.column()
        for ((at, option) in block.options.withIndex()) {
            val press = Action.Choose(block.field, option.value)
            val pick = Pick(context, ui.palette, oneOf = true)
            pick.show(option.label, option.value == block.chosen)
            pick.setTag(R.id.press, press)
            pick.setOnClickListener { ui.press(press) }
            options.addView(pick, context.below(if (short || at == 0) 0 else GAP))
        }
        addView(options, context.below(GAP))
        block.problem?.let { addView(ui.problem(it), context.below(8)) }
    }

    private companion object {
        const val SHORT_CHARS = 14
        const val GAP = 10
        const val SIDE_DP = 150
    }
}
