package app.coilside.session

/** Takes requests to call the person at a time; called on any thread. */
interface WakeRequests {
    /** Whether any alarm waits. */
    val isWaiting: Boolean

    fun wake(effectId: String, utcMs: Long, text: String)

    /** All that are still wanted; the others are taken back. */
    fun onlyThese(open: Set<String>)
}
