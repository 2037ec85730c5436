package app.coilside.blocks

import android.annotation.SuppressLint
import android.graphics.Color
import android.graphics.Paint
import android.view.Gravity
import android.view.View
import android.widget.ImageView
import android.widget.LinearLayout
import app.coilside.R
import app.coilside.view.Type
import app.coilside.view.Weight
import app.coilside.view.below
import app.coilside.view.beside
import app.coilside.view.column
import app.coilside.view.dp
import app.coilside.view.glyphDrawable
import app.coilside.view.heading
import app.coilside.view.pad
import app.coilside.view.row
import app.coilside.view.surface
import app.coilside.view.word
import app.coilside.view.words
import coilside.Block
import coilside.StepState

/** A step with what belongs to it. */
@SuppressLint("ViewConstructor")
class StepBlock(ui: Ui) : BlockView<Block.Step>(ui) {
    private val mark = ImageView(context).apply {
        importantForAccessibility = View.IMPORTANT_FOR_ACCESSIBILITY_NO
        setPadding(dp(7), dp(7), dp(7), dp(7))
    }
    private val title = context.words("", ui.palette.ink, Type.STRONG, Weight.BOLD).heading()
    private val state = context.words("", ui.palette.soft, Type.SMALL)
    private val why = context.words("", ui.palette.soft)
    private val body = BlockList(ui, BODY_GAP_DP)

    init {
        val head = context.row().apply { gravity = Gravity.TOP }
        head.addView(mark, LinearLayout.LayoutParams(dp(MARK_DP), dp(MARK_DP)))
        val names = context.column().apply {
            minimumHeight = dp(MARK_DP)
            gravity = Gravity.CENTER_VERTICAL
        }
        names.addView(title, context.below())
        names.addView(state, context.below(2))
        head.addView(names, context.beside(12))
        addView(head, context.below())
        addView(why, context.below(8))
        addView(body, context.below(BODY_GAP_DP))
    }

    override fun show(block: Block.Step) {
        val look = lookOf(block.state)
        pad(if (look.edgeDp > 0) 16 else 4, 14)
        background = context.surface(look.fill, look.edge, look.edgeDp, dashed = block.state == StepState.GATED)
        mark.background = context.surface(look.markFill, look.markEdge, 2, MARK_DP / 2f)
        mark.setImageDrawable(look.glyph?.let { context.glyphDrawable(it, look.markInk) })
        title.text = block.title
        title.paintFlags = title.paintFlags and Paint.STRIKE_THRU_TEXT_FLAG.inv() or
            if (block.state == StepState.SKIPPED) Paint.STRIKE_THRU_TEXT_FLAG else 0
        val gated = block.state == StepState.GATED
        state.word(block.stateText, if (gated) ui.palette.ink else ui.palette.soft, if (gated) Type.BODY else Type.SMALL, if (gated) Weight.MEDIUM else Weight.PLAIN)
        state.visibility = if (block.stateText.isEmpty()) GONE else VISIBLE
        why.text = block.why
        why.visibility = if (block.why.isEmpty()) GONE else VISIBLE
        body.show(block.blocks)
        body.visibility = if (body.childCount == 0) GONE else VISIBLE
    }

    override fun isStale() = true

    override fun tick() = body.tick()

    private class Look(
        val fill: Int,
        val edge: Int,
        val edgeDp: Int,
        val glyph: Int?,
        val markFill: Int,
        val markEdge: Int,
        val markInk: Int,
    )

    private fun lookOf(state: StepState): Look = with(ui.palette) {
        val none = Color.TRANSPARENT
        when (state) {
            StepState.OPEN -> Look(paper, lead, 2, null, none, lead, lead)
            StepState.RUNNING -> Look(paper, lead, 2, R.drawable.glyph_running, lead, lead, onLead)
            StepState.DONE -> Look(none, none, 0, R.drawable.glyph_done, good, good, paper)
            StepState.GATED -> Look(paper, edge, 2, R.drawable.glyph_gated, none, edge, soft)
            StepState.SKIPPED -> Look(none, none, 0, R.drawable.glyph_skipped, none, edge, soft)
        }
    }

    private companion object {
        const val MARK_DP = 40
        const val BODY_GAP_DP = 14
    }
}
