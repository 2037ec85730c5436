package app.coilside.support

import java.io.File
import org.json.JSONObject

/** The root of the repository. */
val root: File = File(checkNotNull(System.getProperty("coilside.root"))).canonicalFile

/** Where a run leaves what it writes. */
val out: File = File(checkNotNull(System.getProperty("coilside.out"))).canonicalFile

/** What the technician of the tests types and chooses: `tests/visits/answers.json`, shared by the tests of all shells. */
object Answers {
    private val all = JSONObject(File(root, "tests/visits/answers.json").readText())
    private val typed = all.getJSONObject("typed")
    private val chosen = all.getJSONObject("chosen")

    /** Of a text that nobody thought of. */
    private const val UNKNOWN = "20"

    /** By reading: what its pack has at hand, or the middle of what is usual. Reads only what our packs write of TOML. */
    private val middles: Map<String, String> by lazy {
        val packs = File(root, "core/packs").listFiles { file: File -> file.isDirectory }.orEmpty()
        packs.flatMap { readings(File(it, "pack.toml").readText()) }.toMap()
    }

    private fun readings(toml: String): List<Pair<String, String>> =
        Regex("""^\[\[reading]]\n((?:(?!\[).*\n)*)""", RegexOption.MULTILINE).findAll(toml).mapNotNull { found ->
            val reading = found.groupValues[1]
            fun one(pattern: String) = Regex(pattern, RegexOption.MULTILINE).find(reading)?.groupValues
            val id = one("""^id = "(.*)"$""")?.get(1) ?: return@mapNotNull null
            val usual = one("""^usual = \["(.*)", "(.*)"]$""")
            val decimals = one("""^decimals = (\d)$""")?.get(1)?.toInt() ?: 0
            val middle = usual?.let { "%.${decimals}f".format((it[1].toDouble() + it[2].toDouble()) / 2) }
            (one("""^preset = "(.*)"$""")?.get(1) ?: middle)?.let { "read_$id" to it }
        }.toList()

    /** What is typed into a field. */
    fun typed(field: String): String {
        val name = field.replace(Regex("[^\\w-]"), "_")
        return if (typed.has(name)) typed.getString(name) else middles[name] ?: UNKNOWN
    }

    /** Which option is chosen; the first where the wanted one is not offered. */
    fun chosen(field: String, labels: List<String>): Int {
        val name = field.replace(Regex("[^\\w-]"), "_")
        if (!chosen.has(name)) return 0
        return maxOf(0, labels.indexOfFirst { it.startsWith(chosen.getString(name)) })
    }
}
