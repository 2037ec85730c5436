package app.coilside.view

import android.content.Context
import android.graphics.Typeface
import android.os.Build
import android.text.Layout
import android.util.TypedValue
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
    setTextSize(TypedValue.COMPLEX_UNIT_PX, context.px(sizeSp))
    typeface = weight.face
    setLineSpacing(0f, if (sizeSp > Type.STRONG) HEAD_LINES else BODY_LINES)
    breakStrategy = Layout.BREAK_STRATEGY_HIGH_QUALITY
    hyphenationFrequency = Layout.HYPHENATION_FREQUENCY_NONE
    textAlignment = View.TEXT_ALIGNMENT_VIEW_START
}

/** Words as large as the person wants them; headings and amounts, which are large anyway, grow half as much again at most. */
fun Context.px(sizeSp: Float): Float {
    val metrics = resources.displayMetrics
    val wanted = TypedValue.applyDimension(TypedValue.COMPLEX_UNIT_SP, sizeSp, metrics)
    return if (sizeSp <= Type.BODY) wanted else minOf(wanted, sizeSp * LARGE_SCALE_MAX * metrics.density)
}

/** Digits of one width, so that a clock does not tremble and columns stand. */
fun TextView.digits(): TextView = apply { fontFeatureSettings = "tnum" }

/** Says to a screen reader that this is a heading. */
fun TextView.heading(): TextView = apply {
    if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.P) isAccessibilityHeading = true
}

private const val LARGE_SCALE_MAX = 1.5f
private const val BODY_LINES = 1.18f
private const val HEAD_LINES = 1.06f
