package app.coilside.support

import android.graphics.Rect
import android.os.Looper
import android.os.SystemClock
import android.view.MotionEvent
import android.view.View
import android.view.inputmethod.EditorInfo
import android.widget.EditText
import java.time.Duration
import org.robolectric.Shadows.shadowOf

/** A hand in front of the phone: touches go to the window at a place, and meet whatever lies there. */
class Hand(private val phone: Phone) {
    private val looper get() = shadowOf(Looper.getMainLooper())

    /** A short touch in the middle of what can be seen of a view, after scrolling to it. */
    fun tap(view: View) {
        val (x, y) = bring(view)
        val root = view.rootView
        val at = SystemClock.uptimeMillis()
        touch(root, MotionEvent.ACTION_DOWN, at, at, x, y)
        touch(root, MotionEvent.ACTION_UP, at, at + TAP_MS, x, y)
        phone.settle()
    }

    /** A touch that stays for [ms]. */
    fun hold(view: View, ms: Long) {
        val (x, y) = bring(view)
        val root = view.rootView
        val at = SystemClock.uptimeMillis()
        touch(root, MotionEvent.ACTION_DOWN, at, at, x, y)
        looper.idleFor(Duration.ofMillis(ms))
        touch(root, MotionEvent.ACTION_UP, at, SystemClock.uptimeMillis(), x, y)
        phone.settle()
    }

    /**
     * A stroke over a view, by shares of its width and height from its upper left corner. [palm]: where a second touch lies while the
     * first one moves.
     */
    fun stroke(view: View, points: List<Pair<Float, Float>>, palm: Pair<Float, Float>? = null) {
        bring(view)
        val root = view.rootView
        val at = IntArray(2).also(view::getLocationInWindow)
        fun place(share: Pair<Float, Float>) = at[0] + share.first * view.width to at[1] + share.second * view.height
        val down = SystemClock.uptimeMillis()
        var time = down
        fun send(action: Int, vararg places: Pair<Float, Float>) {
            val fingers = Array(places.size) { MotionEvent.PointerProperties().apply { id = it } }
            val lies = Array(places.size) { MotionEvent.PointerCoords().apply { x = places[it].first; y = places[it].second } }
            val event = MotionEvent.obtain(down, time, action, places.size, fingers, lies, 0, 0, 1f, 1f, 0, 0, 0, 0)
            root.dispatchTouchEvent(event)
            event.recycle()
            time += TAP_MS
        }
        send(MotionEvent.ACTION_DOWN, place(points.first()))
        if (palm != null) send(SECOND_DOWN, place(points.first()), place(palm))
        for ((from, to) in points.zipWithNext()) for (part in 1..STROKE_PARTS) {
            val share = part.toFloat() / STROKE_PARTS
            val here = place(from.first + (to.first - from.first) * share to from.second + (to.second - from.second) * share)
            if (palm == null) send(MotionEvent.ACTION_MOVE, here) else send(MotionEvent.ACTION_MOVE, here, place(palm.first + share / 50 to palm.second))
        }
        if (palm != null) send(SECOND_UP, place(points.last()), place(palm))
        send(MotionEvent.ACTION_UP, place(points.last()))
        phone.settle()
    }

    /** Touches a field, empties it and types letter by letter through the connection that keyboards use. */
    fun type(field: EditText, text: String) {
        tap(field)
        check(field.isFocused) { "the field ${field.field} does not take the focus" }
        write(field, text)
    }

    /** Types into a field that has the focus. */
    fun write(field: EditText, text: String) {
        val keyboard = checkNotNull(field.onCreateInputConnection(EditorInfo())) { "no keyboard can write to ${field.field}" }
        keyboard.setSelection(0, field.text.length)
        keyboard.commitText("", 1)
        for (letter in text) keyboard.commitText(letter.toString(), 1)
        check(field.text.toString() == text) { "typed '$text' and '${field.text}' stands there" }
    }

    /** The key 'next' or 'done', and then the finger is elsewhere: as quick fingers do, and it must count once. */
    fun enter(field: EditText) {
        val action = field.imeOptions and EditorInfo.IME_MASK_ACTION
        field.onEditorAction(if (action == EditorInfo.IME_ACTION_UNSPECIFIED) EditorInfo.IME_ACTION_DONE else action)
        field.clearFocus()
        phone.settle()
    }

    /** Scrolls to a view; the middle of what is seen of it, in its window. */
    private fun bring(view: View): Pair<Float, Float> {
        check(view.isAttachedToWindow) { "what is touched is no longer there: ${view.said()}" }
        view.requestRectangleOnScreen(Rect(0, 0, view.width, view.height), true)
        phone.settle()
        val seen = Rect()
        check(view.getGlobalVisibleRect(seen) && !seen.isEmpty) { "cannot be seen: '${view.said()}' (${view.width}×${view.height})" }
        return seen.exactCenterX() to seen.exactCenterY()
    }

    private fun touch(root: View, action: Int, down: Long, at: Long, x: Float, y: Float) {
        val event = MotionEvent.obtain(down, at, action, x, y, 0)
        root.dispatchTouchEvent(event)
        event.recycle()
    }

    private companion object {
        const val TAP_MS = 20L
        const val STROKE_PARTS = 10
        const val SECOND_DOWN = MotionEvent.ACTION_POINTER_DOWN or (1 shl MotionEvent.ACTION_POINTER_INDEX_SHIFT)
        const val SECOND_UP = MotionEvent.ACTION_POINTER_UP or (1 shl MotionEvent.ACTION_POINTER_INDEX_SHIFT)
    }
}
