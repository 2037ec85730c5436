package app.coilside.blocks

import android.annotation.SuppressLint
import app.coilside.R
import app.coilside.view.Flow
import app.coilside.view.PressButton
import app.coilside.view.Type
import app.coilside.view.Weight
import app.coilside.view.below
import app.coilside.view.words
import coilside.Block

/** Something to draw by hand, and the ways to go on without. */
@SuppressLint("ViewConstructor")
class InkBlock(ui: Ui) : BlockView<Block.Ink>(ui) {
    private var field = ""
    private val label = context.words("", ui.palette.ink, Type.BODY, Weight.BOLD)
    private val hint = context.words("", ui.palette.soft)
    private val pad = InkPad(context, ui.palette) { text ->
        ui.fields.drawn(field, text)
        describe()
    }
    private val below = context.run { android.widget.LinearLayout(this).apply { orientation = VERTICAL } }

    init {
        addView(label, context.below())
        addView(hint, context.below(4))
        addView(pad, context.below(10))
        addView(below, context.below())
    }

    override fun show(block: Block.Ink) {
        field = block.field
        label.text = block.label
        hint.text = block.hint
        pad.setTag(R.id.field, block.field)
        pad.show(block.width.toInt(), block.height.toInt(), ui.fields.text(block.field, block.text), block.problem != null)
        describe()
        below.removeAllViews()
        below.addBelow(block.problem?.let(ui::problem), 8)
        below.addBelow(block.taken?.let(ui::inRecord), 8)
        val ways = Flow(context, GAP_DP, fills = true)
        ways.addView(ui.button(block.press))
        val clear = PressButton(context, ui.palette, ui.words.say("ink-clear")) { pad.clear() }
        clear.setTag(R.id.role, "ink-clear")
        ways.addView(clear)
        for (other in block.others) ways.addView(ui.button(other))
        below.addBelow(ways, 12)
    }

    private fun describe() {
        val state = ui.words.say(if (pad.isEmpty) "ink-empty" else "ink-drawn")
        pad.contentDescription = "${label.text}: $state"
    }

    private companion object {
        const val GAP_DP = 10
    }
}
