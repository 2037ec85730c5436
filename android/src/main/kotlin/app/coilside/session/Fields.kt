package app.coilside.session

import android.os.Handler
import android.os.Looper
import coilside.Action

/**
 * What is half typed. It lives here until the core has it, so that a redraw, a turn of the device or a refusal takes
 * nothing away. Used on the main thread.
 */
class Fields(private val send: (Action) -> Unit) {
    private val main = Handler(Looper.getMainLooper())

    /** Text that the core has not acknowledged. */
    private val local = HashMap<String, String>()

    /** Fields typed in since they were last entered. */
    private val touched = HashSet<String>()

    /** Fields whose draft the core has, while somebody still types in them. */
    private val kept = HashSet<String>()

    /** What was entered last: the key 'done' and leaving the field at once is meant once. */
    private val entered = HashMap<String, String>()
    private val resting = HashMap<String, Runnable>()

    /** The text to show where the core knows [known]. */
    fun text(field: String, known: String): String = local[field] ?: known

    fun typed(field: String, text: String) {
        local[field] = text
        touched += field
        kept -= field
        rest(field)
        resting[field] = Runnable { flush(field) }.also { main.postDelayed(it, REST_MS) }
    }

    /** What is drawn is kept at once: a stroke is whole when the pen is lifted. */
    fun drawn(field: String, text: String) {
        local[field] = text
        send(Action.Draft(field, text))
    }

    /** Sends what still rests: before anything is pressed, and when the app leaves the front. */
    fun flushAll() {
        for (field in resting.keys.toList()) flush(field)
    }

    /**
     * A field was left: what was typed is meant. One that was only passed through is not sent again, but for a number that
     * is [halfTyped]: the core holds it as a draft only.
     */
    fun left(field: String, text: String, halfTyped: Boolean) {
        if (field !in touched && !(halfTyped && entered[field] != text)) return
        entered[field] = text
        rest(field)
        touched -= field
        local[field] = text
        send(Action.Enter(field, text))
    }

    /** The core has it. A field that was not left yet keeps what stands in it. */
    fun acknowledged(action: Action) {
        val (field, text) = when (action) {
            is Action.Draft -> action.field to action.text
            is Action.Enter -> action.field to action.text
            else -> return
        }
        if (local[field] != text) return
        if (field in touched) kept += field else local -= field
    }

    /** Another screen is shown: what the core has is its own to show again. */
    fun turned() {
        local -= kept
        kept.clear()
        touched.clear()
        touched += local.keys
        entered.clear()
    }

    fun close() = main.removeCallbacksAndMessages(null)

    private fun flush(field: String) {
        if (!rest(field)) return
        local[field]?.let { send(Action.Draft(field, it)) }
    }

    private fun rest(field: String): Boolean {
        val waiting = resting.remove(field) ?: return false
        main.removeCallbacks(waiting)
        return true
    }

    private companion object {
        /** How long typing must rest before the text is sent, milliseconds. */
        const val REST_MS = 300L
    }
}
