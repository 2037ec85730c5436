package app.coilside.blocks

import android.annotation.SuppressLint
import app.coilside.R
import app.coilside.view.below
import coilside.Block

/** One thing to tick. */
@SuppressLint("ViewConstructor")
class CheckBlock(ui: Ui) : BlockView<Block.Check>(ui) {
    private val pick = Pick(context, ui.palette, oneOf = false)

    init {
        addView(pick, context.below())
    }

    override fun show(block: Block.Check) {
        pick.show(block.label, block.done)
        pick.setTag(R.id.press, block.press)
        pick.setOnClickListener { ui.press(block.press) }
    }
}
