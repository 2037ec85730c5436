package app.coilside.checks

import android.view.View
import android.view.ViewGroup
import android.widget.FrameLayout
import android.widget.TextView
import app.coilside.support.said

/** Something on a screen that a person could not read, find or touch. */
data class Fault(val what: String, val where: String)

/** Names a view for whoever has to mend it. */
fun View.named(): String {
    val words = (this as? TextView)?.text?.toString()?.take(60) ?: said().replace('\n', ' ').take(60)
    return "${javaClass.simpleName} '$words'"
}

/** Where a view lies below [root], in pixels: left, top. */
fun View.under(root: View): Pair<Int, Int> {
    var x = 0
    var y = 0
    var at = this
    while (at !== root) {
        x += at.left + at.translationX.toInt()
        y += at.top + at.translationY.toInt()
        val up = at.parent as? View ?: break
        x -= up.scrollX
        y -= up.scrollY
        at = up
    }
    return x to y
}

/** What can be seen below [this]: of layers above each other that fill the window, the one on top. */
fun View.open(): Sequence<View> = sequence {
    if (visibility != View.VISIBLE) return@sequence
    yield(this@open)
    val group = this@open as? ViewGroup ?: return@sequence
    val covering = covering(group)
    for (child in if (covering != null) listOf(covering) else children(group)) yieldAll(child.open())
}

/** The layer that lies over all others in the activity's frame; none where there is one layer only. */
fun covering(group: ViewGroup): View? {
    val top = children(group).lastOrNull { it.visibility == View.VISIBLE } ?: return null
    val isFrame = group is FrameLayout && (group.parent as? View)?.id == android.R.id.content
    return top.takeIf { isFrame && group.childCount > 1 && it.width == group.width && it.height == group.height }
}

fun children(group: ViewGroup): List<View> = (0 until group.childCount).map(group::getChildAt)
