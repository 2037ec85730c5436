package app.coilside.support

import java.io.File

/** The words as they stand in the core's files, found apart from the core. Only messages of one line without places. */
object English {
    private val words: Map<String, String> by lazy {
        File(root, "core/src/words/en").walkTopDown().filter { it.extension == "ftl" }
            .flatMap { LINE.findAll(it.readText()).map { found -> found.groupValues[1] to found.groupValues[2].trim() } }.toMap()
    }

    private val LINE = Regex("""^([a-z][\w-]*) = (.+)$""", RegexOption.MULTILINE)

    operator fun get(key: String): String = checkNotNull(words[key]) { "no words for $key" }
}
