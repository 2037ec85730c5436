package app.coilside.checks

import android.view.View
import android.view.ViewGroup
import android.widget.EditText
import android.widget.ScrollView

/** The least side of what is touched, in dp. */
const val SIDE_LEAST_DP = 48

/** What a finger, a key or a screen reader can act on. */
fun controls(root: View): List<View> = root.open().filter { it.isEnabled && (it.isClickable || it is EditText) && it.importantForAccessibility != View.IMPORTANT_FOR_ACCESSIBILITY_NO }.toList()

/** Controls that a screen reader could not name. */
fun unnamed(root: View): List<Fault> = controls(root).filter { view ->
    val told = view.createAccessibilityNodeInfo()
    val own = listOf(told.text, told.contentDescription, told.hintText ?: (view as? EditText)?.hint)
    val labelled = { view.id != View.NO_ID && root.open().any { it.labelFor == view.id && it.said().isNotBlank() } }
    own.all { it.isNullOrBlank() } && !labelled() && (view !is ViewGroup || view.said().isBlank())
}.map { Fault("has no name", it.named()) }

/** What a screen reader would say of a view and of what lies in it. */
private fun View.said(): String = open().mapNotNull { view ->
    (view.contentDescription ?: (view as? android.widget.TextView)?.text)?.toString()?.ifBlank { null }
}.joinToString(" ")

/** Controls that a gloved finger would miss. */
fun small(root: View): List<Fault> {
    val density = root.resources.displayMetrics.density
    val least = SIDE_LEAST_DP * density - 0.5f
    return controls(root).filter { it.width < least || it.height < least }
        .map { Fault("is %.0f × %.0f dp small".format(it.width / density, it.height / density), it.named()) }
}

/** Controls that come before one that lies above them, or to the left of them in the same row. */
fun disordered(root: View): List<Fault> {
    val forward = root.layoutDirection != View.LAYOUT_DIRECTION_RTL
    return groups(root).flatMap { group ->
        group.zipWithNext().mapNotNull { (first, second) ->
            val (ax, ay) = first.under(root)
            val (bx, by) = second.under(root)
            val sameRow = by < ay + first.height && ay < by + second.height
            val after = if (sameRow) (if (forward) bx >= ax else bx <= ax) || by > ay else by >= ay
            if (after) null else Fault("comes after ${first.named()} and lies before it", second.named())
        }
    }
}

/** The controls in the order of the tree; what scrolls is a group of its own. */
private fun groups(root: View): List<List<View>> {
    val scrolling = root.open().filterIsInstance<ScrollView>().toList()
    val inside = scrolling.map { controls(it) }
    val within = inside.flatten().toSet()
    return inside + listOf(controls(root).filter { it !in within })
}

/** Layers below the one on top that a screen reader would still read. */
fun readThrough(root: View): List<Fault> = root.open().filterIsInstance<ViewGroup>().flatMap { group ->
    val top = covering(group) ?: return@flatMap emptyList()
    children(group).filter { it !== top && it.visibility == View.VISIBLE && it.importantForAccessibility != View.IMPORTANT_FOR_ACCESSIBILITY_NO_HIDE_DESCENDANTS }
        .map { Fault("is covered and can still be read", it.named()) }
}.toList()
