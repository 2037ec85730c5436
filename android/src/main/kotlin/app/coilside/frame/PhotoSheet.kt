package app.coilside.frame

import android.annotation.SuppressLint
import android.view.Gravity
import android.view.View
import app.coilside.R
import app.coilside.blocks.DrawingView
import app.coilside.blocks.PictureView
import app.coilside.blocks.Ui
import app.coilside.blocks.problem
import app.coilside.effects.Camera
import app.coilside.effects.Stage
import app.coilside.effects.Wanted
import app.coilside.view.Type
import app.coilside.view.WRAP
import app.coilside.view.Weight
import app.coilside.view.below
import app.coilside.view.beside
import app.coilside.view.column
import app.coilside.view.row
import app.coilside.view.words
import coilside.Block
import coilside.Tone

/** A photograph to take: what it must show, the one before beside it, and the ways to get one. */
@SuppressLint("ViewConstructor")
class PhotoSheet(ui: Ui, private val camera: Camera, private val take: () -> Unit, private val pick: () -> Unit) :
    Sheet(ui, ui.words.say("take"), { camera.cancel() }) {
    private var shown: Any? = null

    fun show(wanted: Wanted, block: Block.Shot?) {
        val state = listOf(wanted.id, wanted.request, camera.stage, camera.problem, block)
        if (state == shown) return
        shown = state
        content.removeAllViews()
        content.addView(head(wanted), context.below())
        camera.problem?.let { content.addView(ui.problem(ui.words.say(it)), context.below(14)) }
        val before = block?.before
        val example = block?.drawing
        if (before != null) content.addView(PictureView(ui, before, ui.words.say("before-picture")), context.below(14))
        else if (example != null) content.addView(DrawingView(context, ui.palette, example, DRAWING_DP), middle())
        if (camera.stage == Stage.SAVING) {
            val wait = context.words(ui.words.say("photo-saving"), ui.palette.ink, Type.STRONG, Weight.MEDIUM)
            wait.accessibilityLiveRegion = View.ACCESSIBILITY_LIVE_REGION_POLITE
            content.addView(wait, context.below(18))
            return
        }
        if (camera.canKeepAgain) {
            content.addView(way(ui.words.say("try-again"), "again", Tone.PRIMARY, main = true) { camera.keepAgain() }, context.below(16))
        }
        content.addView(way(ui.words.say("take"), "photo-take", Tone.PRIMARY, R.drawable.glyph_camera, main = true, press = take), context.below(16))
        content.addView(way(ui.words.say("picture"), "photo-pick", icon = R.drawable.glyph_picture, press = pick), context.below(10))
        content.addView(way(ui.words.say("cancel"), "photo-cancel") { camera.cancel() }, context.below(10))
    }

    private fun head(wanted: Wanted): View = context.row().apply {
        gravity = Gravity.TOP
        val unit = wanted.request.unit
        if (unit.isNotEmpty()) addView(ui.unitLetter(unit, ui.palette.ink, ui.palette.ink))
        val names = context.column()
        names.addView(title(wanted.request.title), context.below())
        if (wanted.request.show.isNotEmpty()) names.addView(context.words(wanted.request.show, ui.palette.soft), context.below(4))
        addView(names, context.beside(if (unit.isEmpty()) 0 else 14))
    }

    private fun middle() = context.below(14).apply {
        width = WRAP
        gravity = Gravity.CENTER_HORIZONTAL
    }

    private companion object {
        const val DRAWING_DP = 260
    }
}

/** The block of a slot, wherever it stands. */
fun shotOf(blocks: List<Block>, slot: String): Block.Shot? = blocks.firstNotNullOfOrNull { block ->
    when (block) {
        is Block.Shot -> block.takeIf { it.slot == slot }
        is Block.Step -> shotOf(block.blocks, slot)
        else -> null
    }
}
