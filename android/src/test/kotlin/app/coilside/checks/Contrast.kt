package app.coilside.checks

import android.graphics.Bitmap
import android.graphics.Color
import android.view.View
import android.widget.TextView
import kotlin.math.max
import kotlin.math.min
import kotlin.math.pow

/** The least contrast of text that WCAG 2.2 AA asks for. */
const val CONTRAST_LEAST = 4.5
private const val LINES_MAX = 2

/** Each of the 256 values of a part of a colour, made linear after WCAG 2.2. */
private val LINEAR = DoubleArray(256) { value -> (value / 255.0).let { if (it <= 0.04045) it / 12.92 else ((it + 0.055) / 1.055).pow(2.4) } }

/** Relative luminance after WCAG 2.2. */
private fun luminance(colour: Int): Double =
    0.2126 * LINEAR[Color.red(colour)] + 0.7152 * LINEAR[Color.green(colour)] + 0.0722 * LINEAR[Color.blue(colour)]

/** 1 to 21. */
fun contrast(one: Int, other: Int): Double {
    val (a, b) = luminance(one) to luminance(other)
    return (max(a, b) + 0.05) / (min(a, b) + 0.05)
}

/** Text that stands out less than [least] to one from what lies around it, by the pixels of [picture], which shows [root]. */
fun faint(root: View, picture: Bitmap, least: Double = CONTRAST_LEAST): List<Fault> = faint(root.open(), root, picture, least)

/** The same of [views], which lie below [root]. */
fun faint(views: Sequence<View>, root: View, picture: Bitmap, least: Double): List<Fault> = views.filterIsInstance<TextView>().mapNotNull { view ->
    // What cannot be pressed now may be faint, so that it is seen that it cannot; WCAG leaves it out too.
    if (view.text.isBlank() || !view.isEnabled) null else faint(view, root, picture, least)
}.toList()

private fun faint(view: TextView, root: View, picture: Bitmap, least: Double): Fault? {
    val layout = view.layout ?: return null
    val (x, y) = view.under(root)
    val left = x + view.compoundPaddingLeft - view.scrollX
    val top = y + view.extendedPaddingTop - view.scrollY
    val shift = if (view.gravity and 0x70 == 0x10) (view.height - view.extendedPaddingTop - view.extendedPaddingBottom - layout.height) / 2 else 0
    // A text has one colour: two of its lines tell it.
    val worst = (0 until minOf(layout.lineCount, LINES_MAX)).mapNotNull { line ->
        val from = left + layout.getLineLeft(line).toInt()
        val to = left + layout.getLineRight(line).toInt()
        ofBox(picture, from, top + shift + layout.getLineTop(line), to, top + shift + layout.getLineBottom(line))
    }.minOrNull() ?: return null
    return if (worst < least) Fault("contrast %.2f of %.1f".format(worst, least), view.named()) else null
}

/** The contrast between what fills most of a box and what stands out most in it; none where the box is not in the picture. */
private fun ofBox(picture: Bitmap, left: Int, top: Int, right: Int, bottom: Int): Double? {
    val (x0, x1) = left.coerceIn(0, picture.width) to right.coerceIn(0, picture.width)
    val (y0, y1) = top.coerceIn(0, picture.height) to bottom.coerceIn(0, picture.height)
    if (x1 - x0 < 2 || y1 - y0 < 2) return null
    val pixels = IntArray((x1 - x0) * (y1 - y0))
    picture.getPixels(pixels, 0, x1 - x0, x0, y0, x1 - x0, y1 - y0)
    val counts = HashMap<Int, Int>()
    var from = 0
    for (at in 1..pixels.size) {
        if (at < pixels.size && pixels[at] == pixels[from]) continue
        counts.merge(pixels[from], at - from, Int::plus)
        from = at
    }
    val ground = counts.maxBy { it.value }.key
    // One odd pixel is no letter.
    return counts.filterValues { it > 1 }.keys.maxOfOrNull { contrast(it, ground) } ?: 1.0
}
