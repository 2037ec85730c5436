package app.coilside.view

import android.content.Context
import android.graphics.Typeface
import android.os.Build
import android.text.Layout
import android.view.View
import android.widget.TextView

/** Sizes of words, sp. */
object Type {
    const val SMALL = 15f
    const val BODY = 18f
    const val STRONG = 20f
    const val HEADING = 23f
    const val TITLE = 25f
    const val AMOUNT = 28f
    const val NUMBER = 36f
}

/** How heavy words are. */
enum class Weight(val face: Typeface) {
    PLAIN(Typeface.create("sans-serif", Typeface.NORMAL)),
    MEDIUM(Typeface.create("sans-serif-medium", Typeface.NORMAL)),
    BOLD(Typeface.create("sans-serif", Typeface.BOLD)),
}

/** Words to read. */
fun Context.words(text: CharSequence, color: Int, sizeSp: Float = Type.BODY, weight: Weight = Weight.PLAIN): TextView =
    TextView(this).apply { word(text, color, sizeSp, weight) }

/** Sets the words of a view in our type. */
fun TextView.word(text: CharSequence, color: Int, sizeSp: Float = Type.BODY, weight: Weight = Weight.PLAIN) {
    this.text = text
    setTextColor(color)
    textSize = sizeSp
    typeface = weight.face
    setLineSpacing(0f, if (sizeSp > Type.STRONG) HEAD_LINES else BODY_LINES)
    breakStrategy = Layout.BREAK_STRATEGY_HIGH_QUALITY
    hyphenationFrequency = Layout.HYPHENATION_FREQUENCY_NONE
    textAlignment = View.TEXT_ALIGNMENT_VIEW_START
}

/** Digits of one width, so that a clock does not tremble and columns stand. */
fun TextView.digits(): TextView = apply { fontFeatureSettings = "tnum" }

/** Says to a screen reader that this is a heading. */
fun TextView.heading(): TextView = apply {
    if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.P) isAccessibilityHeading = true
}

private const val BODY_LINES = 1.18f
private const val HEAD_LINES = 1.06f
