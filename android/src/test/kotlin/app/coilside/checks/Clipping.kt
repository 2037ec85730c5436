package app.coilside.checks

import android.text.Layout
import android.view.View
import android.view.ViewGroup
import android.widget.EditText
import android.widget.ScrollView
import android.widget.TextView

/** Text that is cut off, shortened, or lies outside of what holds it. */
fun clipped(root: View): List<Fault> = root.open().flatMap { view ->
    sequenceOf((view as? TextView)?.let(::cut), outside(view)).filterNotNull()
}.toList()

private fun cut(view: TextView): Fault? {
    val layout = view.layout ?: return null
    if (view.text.isEmpty()) return null
    val across = view.width - view.compoundPaddingLeft - view.compoundPaddingRight
    val down = view.height - view.compoundPaddingTop - view.compoundPaddingBottom
    val why = when {
        (0 until layout.lineCount).any { layout.getEllipsisCount(it) > 0 } -> "is shortened with dots"
        layout.getLineEnd(layout.lineCount - 1) < view.text.length -> "ends before its last line"
        // A field for words scrolls by itself. What a line ends in is measured with it, and a space that hangs over takes nothing away.
        view !is EditText && (0 until layout.lineCount).any { inked(view, it) > across + 1 } -> "is wider than its place: $across px"
        layout.height > down + 1 && !view.isVerticalScrollBarEnabled -> "is higher than its place: ${layout.height} of $down px"
        else -> return null
    }
    return Fault("text $why", view.named())
}

/** How wide a line is without the spaces at its end. */
private fun inked(view: TextView, line: Int): Float {
    val text = view.text
    val start = view.layout.getLineStart(line)
    var end = view.layout.getLineEnd(line)
    while (end > start && text[end - 1].isWhitespace()) end -= 1
    return Layout.getDesiredWidth(text, start, end, view.paint)
}

/** A view with something to show that reaches out of its parent, where nobody can scroll to it. */
private fun outside(view: View): Fault? {
    val parent = view.parent as? ViewGroup ?: return null
    if (view.width == 0 || view.height == 0 || view !is TextView && !view.isClickable) return null
    val left = view.left + view.translationX
    val top = view.top + view.translationY
    val across = left < -1 || left + view.width > parent.width + 1
    val down = top < -1 || top + view.height > parent.height + 1
    val why = when {
        across -> "across: ${left.toInt()} to ${(left + view.width).toInt()} of ${parent.width} px"
        down && parent !is ScrollView -> "down: ${top.toInt()} to ${(top + view.height).toInt()} of ${parent.height} px"
        else -> return null
    }
    return Fault("lies outside of what holds it, $why", view.named())
}
