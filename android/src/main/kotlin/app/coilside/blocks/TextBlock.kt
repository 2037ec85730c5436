package app.coilside.blocks

import android.annotation.SuppressLint
import android.view.Gravity
import app.coilside.view.Type
import app.coilside.view.Weight
import app.coilside.view.below
import app.coilside.view.beside
import app.coilside.view.glyph
import app.coilside.view.glyphOf
import app.coilside.view.heading
import app.coilside.view.dp
import app.coilside.view.row
import app.coilside.view.words
import coilside.Block
import coilside.Tone

/** Words: running text, or a heading. */
@SuppressLint("ViewConstructor")
class TextBlock(ui: Ui) : BlockView<Block.Text>(ui) {
    override fun show(block: Block.Text) {
        removeAllViews()
        val color = ui.palette.words(block.tone)
        val level = block.level.toInt()
        if (level > 0) {
            val size = when (level) {
                1 -> Type.HEADING
                2 -> Type.STRONG
                else -> Type.BODY
            }
            setPadding(0, dp(if (level == 1) 8 else 4), 0, 0)
            addView(context.words(block.text, color, size, Weight.BOLD).heading(), context.below())
            return
        }
        val marked = block.tone == Tone.GOOD || block.tone == Tone.ATTENTION || block.tone == Tone.DANGER
        if (!marked) {
            addView(context.words(block.text, color), context.below())
            return
        }
        addView(ui.marked(block.text, color, glyphOf(block.tone)), context.below())
    }
}

/** Words with a drawing before them. */
fun Ui.marked(text: String, color: Int, glyph: Int, sizeSp: Float = Type.BODY, weight: Weight = Weight.MEDIUM) =
    context.row().apply {
        gravity = Gravity.TOP
        addView(context.glyph(glyph, color, sizeSp * 1.4f))
        addView(context.words(text, color, sizeSp, weight), context.beside(8))
    }
