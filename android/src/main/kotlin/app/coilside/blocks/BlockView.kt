package app.coilside.blocks

import android.widget.LinearLayout
import app.coilside.R
import coilside.Block

/** Draws one block, and draws it anew when it changed. */
abstract class BlockView<B : Block>(protected val ui: Ui) : LinearLayout(ui.context) {
    init {
        orientation = VERTICAL
    }

    /** Shows [block], which is of the same kind and about the same thing as the one before. */
    fun take(block: B) {
        if (getTag(R.id.block) == block && !isStale()) return
        setTag(R.id.block, block)
        show(block)
    }

    protected abstract fun show(block: B)

    /** Whether the view depends on more than its block and that has changed. */
    protected open fun isStale(): Boolean = false

    /** The time went on. */
    open fun tick() = Unit
}
