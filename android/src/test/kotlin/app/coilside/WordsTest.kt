package app.coilside

import app.coilside.support.root
import java.io.File
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test

/** A shell never knows what it is used for, and has no words of its own. */
class WordsTest {
    private val main = File(root, "android/src/main")

    private val sources: List<File> = main.walkTopDown().filter { it.isFile }.toList()

    /** The lines of all sources, and the names of all files and folders, that have a word of the trade. */
    private fun domainWords(files: List<Pair<String, String>>): List<String> = files.flatMap { (name, text) ->
        (listOf("(its name)" to name) + text.lines().mapIndexed { at, line -> "line ${at + 1}" to line }).mapNotNull { (where, line) ->
            DOMAIN.find(line.replace(OURS, "").replace(CAMEL, " "))?.let { "$name $where: '${it.value.trim()}' in $line" }
        }
    }

    @Test
    fun `no source of the shell has a word of the trade, in names and comments too`() {
        assertTrue("only ${sources.size} sources were found", sources.size > 30)
        val files = sources.map { it.relativeTo(main).path to it.readText(Charsets.ISO_8859_1) }
        assertEquals("", domainWords(files).joinToString("\n"))
    }

    @Test
    fun `a word of the trade would be found, in whatever case and wherever it stands`() {
        for (planted in listOf("class CoilView", "// warm the water", "val acidLeft", "R.id.heat_pump", "val t = 5 // °C", "descale()", "rinseWater", "<string name=\"refrigerant\">")) {
            assertEquals(planted, 1, domainWords(listOf("A.kt" to planted)).size)
        }
        for (fine in listOf("package app.coilside", "import coilside.Door", "textScaleX", "Looper.loop()", "Scheduler", "theatre of views", "literal")) {
            assertEquals(fine, 0, domainWords(listOf("A.kt" to fine)).size)
        }
        assertEquals(1, domainWords(listOf("AcidDrawable.kt" to "")).size)
    }

    @Test
    fun `every word that the shell asks for stands in English and in Spanish`() {
        val asked = sources.filter { it.extension == "kt" }.flatMap { file -> SAY.findAll(file.readText()).map { it.groupValues[1] } }.toSet()
        assertTrue("only ${asked.size} words are asked for", asked.size > 20)
        for (language in listOf("en", "es")) {
            val there = KEY.findAll(File(root, "core/src/words/$language/shell.ftl").readText()).map { it.groupValues[1] }.toSet()
            assertEquals("not in $language", emptySet<String>(), asked - there)
        }
    }

    private companion object {
        /** Our own name has one of the words in it. */
        val OURS = Regex("coilside", RegexOption.IGNORE_CASE)
        val CAMEL = Regex("(?<=[a-z])(?=[A-Z])|[_-]")
        val DOMAIN = Regex(
            listOf(
                "\\bcoils?\\b", "\\bacid", "\\balkali", "\\bheat(s|ed|er|ers|ing)?\\b", "refriger", "\\bpumps?\\b", "\\bpumped", "descal", "limescale", "\\bscald",
                "\\bwater", "exchanger", "boiler", "\\bburner", "compressor", "condenser", "evaporat", "\\btanks?\\b", "cylinder", "\\bvalve", "\\brins(e|es|ed|ing)\\b",
                "\\bcitric", "neutralis", "chlorin", "legionella", "backflow", "flammable", "anode", "isolator", "thermometer", "thermostat", "hydraul",
                "\\bfans?\\b", "\\bfins?\\b", "\\bspray", "electric", "voltage", "\\bcapacitor", "°C", "°F", "celsius", "fahrenheit", "kelvin", "\\bpH\\b", "hardness", "conductiv",
                "\\blit(re|er)s?\\b", "\\bbucket", "\\bhose", "\\bpipe(s|work)?\\b", "\\btemperature", "nameplate", "\\bdwell time", "\\bglycol", "\\bsolar", "plumb", "\\bhvac\\b",
            ).joinToString("|"),
            RegexOption.IGNORE_CASE,
        )
        val SAY = Regex("""\bsay\("([\w-]+)"""")
        val KEY = Regex("""^shell-([\w-]+) =""", RegexOption.MULTILINE)
    }
}
