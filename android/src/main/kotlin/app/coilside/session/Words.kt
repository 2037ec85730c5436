package app.coilside.session

/** The shell's own words, as the core gives them. */
class Words(private val words: Map<String, String>) {
    /** The words of a key without its `shell-`; the key itself where there are none, so that a gap shows. */
    fun say(key: String): String = words["shell-$key"] ?: key
}
