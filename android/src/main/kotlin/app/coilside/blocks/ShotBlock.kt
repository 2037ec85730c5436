package app.coilside.blocks

import android.annotation.SuppressLint
import app.coilside.R
import app.coilside.view.Flow
import app.coilside.view.Type
import app.coilside.view.Weight
import app.coilside.view.below
import app.coilside.view.heading
import app.coilside.view.pad
import app.coilside.view.surface
import app.coilside.view.words
import coilside.Block

/** A photograph that is wanted, with what it must show and the one before, to frame alike. */
@SuppressLint("ViewConstructor")
class ShotBlock(ui: Ui) : BlockView<Block.Shot>(ui) {
    override fun show(block: Block.Shot) {
        removeAllViews()
        val palette = ui.palette
        val wanted = block.photos.isEmpty()
        background = context.surface(palette.paper, if (wanted) palette.edge else palette.line, if (wanted) 2 else 1, dashed = wanted)
        pad(16, 14)
        addView(context.words(block.title, palette.ink, Type.STRONG, Weight.BOLD).heading(), context.below())
        if (block.show.isNotEmpty()) addView(context.words(block.show, palette.soft), context.below(4))
        val pictures = Flow(context, GAP_DP, fills = true, leastDp = PICTURE_DP)
        block.drawing?.takeIf { wanted }?.let { pictures.addView(DrawingView(context, palette, it)) }
        block.before?.let { pictures.addView(PictureView(ui, it, ui.words.say("before-picture"))) }
        for (photo in block.photos) pictures.addView(PictureView(ui, photo, null))
        if (pictures.childCount > 0) addView(pictures, context.below(12))
        val ways = Flow(context, 10, fills = true)
        ways.addView(ui.button(block.press, icon = R.drawable.glyph_camera))
        block.skip?.let { ways.addView(ui.button(it)) }
        addView(ways, context.below(14))
    }

    private companion object {
        const val GAP_DP = 12
        const val PICTURE_DP = 136
    }
}
