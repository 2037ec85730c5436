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
    val children = (0 until group.childCount).map(group::getChildAt)
    val top = children.lastOrNull { it.visibility == View.VISIBLE }
    val covers = group is FrameLayout && (group.parent as? View)?.id == android.R.id.content && top != null && top.width == group.width && top.height == group.height
    for (child in if (covers) listOfNotNull(top) else children) yieldAll(child.open())
}
