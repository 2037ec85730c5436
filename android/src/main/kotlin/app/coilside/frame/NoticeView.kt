package app.coilside.frame

import android.annotation.SuppressLint
import android.view.Gravity
import android.view.View
import android.widget.LinearLayout
import app.coilside.R
import app.coilside.blocks.Ui
import app.coilside.blocks.button
import app.coilside.view.Flow
import app.coilside.view.Type
import app.coilside.view.Weight
import app.coilside.view.below
import app.coilside.view.beside
import app.coilside.view.glyph
import app.coilside.view.glyphOf
import app.coilside.view.heading
import app.coilside.view.pad
import app.coilside.view.row
import app.coilside.view.surface
import app.coilside.view.words
import coilside.Notice
import coilside.Tone

/** Something that must be seen before the rest. [more] stands below its lines. */
@SuppressLint("ViewConstructor")
class NoticeView(private val ui: Ui, notice: Notice, more: List<View> = emptyList()) : LinearLayout(ui.context) {
    init {
        orientation = VERTICAL
        val palette = ui.palette
        val (fill, edge) = when (notice.tone) {
            Tone.GOOD -> palette.goodWash to palette.good
            Tone.ATTENTION -> palette.attentionWash to palette.attentionEdge
            Tone.DANGER -> palette.dangerWash to palette.dangerEdge
            else -> palette.paper to palette.edge
        }
        background = context.surface(fill, edge, if (notice.tone == Tone.DANGER) 3 else 2)
        pad(16, 14, 16)
        setTag(R.id.role, "notice")
        setTag(R.id.tone, notice.tone)
        val color = palette.words(notice.tone)
        val head = context.row().apply { gravity = Gravity.TOP }
        head.addView(context.glyph(glyphOf(notice.tone), color, GLYPH_DP))
        head.addView(context.words(notice.title, color, TITLE_SP, Weight.BOLD).heading(), context.beside(10))
        addView(head, context.below())
        for (line in notice.lines) addView(line(line, many = notice.lines.size > 1), context.below(8))
        val ways = Flow(context, WAYS_GAP_DP, fills = true)
        for (button in notice.buttons) ways.addView(ui.button(button))
        for (view in more) ways.addView(view)
        if (ways.childCount > 0) addView(ways, context.below(12))
    }

    private fun line(text: String, many: Boolean): View {
        val words = context.words(text, ui.palette.ink)
        if (!many) return words
        return context.row().apply {
            val dash = context.words("–", ui.palette.ink, Type.BODY)
            dash.importantForAccessibility = IMPORTANT_FOR_ACCESSIBILITY_NO
            addView(dash)
            addView(words, context.beside(8))
        }
    }

    private companion object {
        const val GLYPH_DP = 30
        const val TITLE_SP = 21f
        const val WAYS_GAP_DP = 10
    }
}
