package app.coilside.blocks

import android.annotation.SuppressLint
import android.graphics.Color
import android.view.Gravity
import app.coilside.view.Type
import app.coilside.view.Weight
import app.coilside.view.below
import app.coilside.view.beside
import app.coilside.view.glyph
import app.coilside.view.heading
import app.coilside.view.pad
import app.coilside.view.row
import app.coilside.view.signOf
import app.coilside.view.surface
import app.coilside.view.words
import coilside.Block

/** A hazard where it bites: a head of the strongest contrast that there is, with the pictogram in it. */
@SuppressLint("ViewConstructor")
class CautionBlock(ui: Ui) : BlockView<Block.Caution>(ui) {
    override fun show(block: Block.Caution) {
        removeAllViews()
        val palette = ui.palette
        background = context.surface(palette.paper, palette.ink, 2)
        clipToOutline = true
        addView(
            context.row().apply {
                gravity = Gravity.CENTER_VERTICAL
                setBackgroundColor(palette.ink)
                pad(14, 8)
                addView(context.glyph(context.signOf(block.sign), palette.paper, SIGN_DP))
                val title = context.words(block.title, palette.paper, Type.STRONG, Weight.BOLD).heading()
                title.setBackgroundColor(Color.TRANSPARENT)
                title.contentDescription = "${ui.words.say("caution")}: ${block.title}"
                addView(title, context.beside(12))
            },
            context.below(),
        )
        addView(context.words(block.text, palette.ink).apply { pad(16, 12, 14) }, context.below())
    }

    private companion object {
        const val SIGN_DP = 40
    }
}
