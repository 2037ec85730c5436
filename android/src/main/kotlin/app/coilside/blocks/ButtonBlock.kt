package app.coilside.blocks

import android.annotation.SuppressLint
import app.coilside.view.below
import coilside.Block

/** Something to press. */
@SuppressLint("ViewConstructor")
class ButtonBlock(ui: Ui) : BlockView<Block.Button>(ui) {
    override fun show(block: Block.Button) {
        removeAllViews()
        addView(ui.button(block.button), context.below())
    }
}
