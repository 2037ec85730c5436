package app.coilside.blocks

import android.view.View
import android.widget.EditText
import android.widget.LinearLayout
import app.coilside.R
import app.coilside.view.Weight
import app.coilside.view.below
import app.coilside.view.column
import app.coilside.view.pad
import app.coilside.view.surface
import coilside.Question

/** What is wrong with what was typed. */
fun Ui.problem(text: String): View = marked(text, palette.danger, R.drawable.glyph_danger).apply {
    accessibilityLiveRegion = View.ACCESSIBILITY_LIVE_REGION_POLITE
}

/** What was typed is asked back. */
fun Ui.question(asked: Question): View = context.column().apply {
    background = context.surface(palette.attentionWash, palette.attentionEdge, 2, QUESTION_ROUND_DP)
    pad(14, 12)
    accessibilityLiveRegion = View.ACCESSIBILITY_LIVE_REGION_POLITE
    addView(marked(asked.text, palette.attention, R.drawable.glyph_attention, weight = Weight.BOLD), context.below())
    addView(button(asked.confirm), context.below(10))
}

/** What stands in the record. */
fun Ui.inRecord(text: String): View = marked(text, palette.ink, R.drawable.glyph_kept)

/** Shows what belongs in a field, unless somebody types in it something that is not sent yet. */
fun EditText.follow(wanted: String) {
    if (text.toString() == wanted) return
    setText(wanted)
    setSelection(text.length)
}

/** Puts [view] below the others, or nothing. */
fun LinearLayout.addBelow(view: View?, aboveDp: Int) {
    if (view != null) addView(view, context.below(aboveDp))
}

private const val QUESTION_ROUND_DP = 10f
