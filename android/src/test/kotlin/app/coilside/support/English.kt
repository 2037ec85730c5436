package app.coilside.support

import java.io.File

/** The words of a language as they stand in the core's files, found apart from the core. Only messages of one line without places. */
open class Told(private val language: String) {
    private val words: Map<String, String> by lazy {
        File(root, "core/src/words/$language").walkTopDown().filter { it.extension == "ftl" }
            .flatMap { LINE.findAll(it.readText()).map { found -> found.groupValues[1] to found.groupValues[2].trim() } }.toMap()
    }

    operator fun get(key: String): String = checkNotNull(words[key]) { "no words for $key in $language" }

    private companion object {
        val LINE = Regex("""^([a-z][\w-]*) = (.+)$""", RegexOption.MULTILINE)
    }
}

object English : Told("en")

object Spanish : Told("es")
