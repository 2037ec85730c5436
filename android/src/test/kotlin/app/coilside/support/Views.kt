package app.coilside.support

import android.graphics.Rect
import android.view.View
import android.view.ViewGroup
import android.widget.EditText
import android.widget.TextView
import app.coilside.R
import coilside.Action
import coilside.Block

/** Every view below this one that can be seen, itself first, in the order of the screen's tree. */
fun View.all(): Sequence<View> = sequence {
    if (visibility != View.VISIBLE) return@sequence
    yield(this@all)
    val group = this@all as? ViewGroup ?: return@sequence
    for (at in 0 until group.childCount) yieldAll(group.getChildAt(at).all())
}

/** What pressing it sends. */
val View.press: Action? get() = getTag(R.id.press) as? Action

/** The block that it draws. */
val View.block: Block? get() = getTag(R.id.block) as? Block

/** The field that is typed, drawn or chosen in. */
val View.field: String? get() = getTag(R.id.field) as? String

/** What it is for: 'foot', 'menu', … */
val View.role: String? get() = getTag(R.id.role) as? String

fun View.withRole(role: String): View? = all().firstOrNull { it.role == role }

fun View.withPress(action: Action): View? = all().firstOrNull { it.press == action }

fun View.input(field: String): EditText? = all().filterIsInstance<EditText>().firstOrNull { it.field == field }

/** All words that can be seen or are said in place of what can be seen. */
fun View.words(): String = all().mapNotNull { view ->
    listOfNotNull((view as? TextView)?.text, (view as? TextView)?.hint, view.contentDescription)
        .map(CharSequence::toString).filter(String::isNotBlank).distinct().joinToString(" · ").ifEmpty { null }
}.joinToString("\n").replace('\u00a0', ' ')

/** Its own words, or what is said in place of them. */
fun View.said(): String =
    (contentDescription ?: (this as? TextView)?.text ?: (this as? ViewGroup)?.words() ?: "").toString().replace('\u00a0', ' ')

/** Whether all of it is in sight. */
fun View.isWhole(): Boolean = Rect().let { getGlobalVisibleRect(it) && it.width() == width && it.height() == height }
