package app.coilside.blocks

import android.annotation.SuppressLint
import app.coilside.R
import app.coilside.view.PressButton
import app.coilside.view.below
import app.coilside.view.words
import coilside.Block

/** Another page. Only addresses that open a page or call a person are followed. */
@SuppressLint("ViewConstructor")
class LinkBlock(ui: Ui) : BlockView<Block.Link>(ui) {
    override fun show(block: Block.Link) {
        removeAllViews()
        if (!isFollowed(block.to)) {
            addView(context.words("${block.label}: ${block.to}", ui.palette.ink), context.below())
            return
        }
        val button = PressButton(context, ui.palette, block.label, icon = R.drawable.glyph_leave) { ui.follow(block) }
        button.setTag(R.id.role, "link")
        addView(button, context.below())
    }

    companion object {
        private val OUTSIDE = Regex("^(https?|tel|sms|mailto|geo):", RegexOption.IGNORE_CASE)

        /** The owner's summary, as the core names it. */
        const val SUMMARY_PAGE = "summary.html"
        const val SUMMARY_PAPER = "summary.pdf"

        fun isFollowed(to: String): Boolean = to == SUMMARY_PAGE || to == SUMMARY_PAPER || OUTSIDE.containsMatchIn(to)
    }
}
