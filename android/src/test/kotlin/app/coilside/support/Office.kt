package app.coilside.support

import java.io.File
import java.net.HttpURLConnection
import java.net.URL
import java.net.URLEncoder
import kotlin.concurrent.thread
import org.json.JSONArray

/** The real office's program in a folder of its own, on a port of this machine. */
class Office(private val folder: File) : AutoCloseable {
    private val program = File(root, "target/debug/coilside").path
    private var process: Process? = null

    /** Always the same, so that the office comes back where it was. */
    var port = 0
        private set

    fun start() {
        val started = ProcessBuilder(program, "office", "--folder", folder.path, "--port", port.toString()).redirectErrorStream(true).start()
        process = started
        val lines = started.inputStream.bufferedReader()
        port = generateSequence { lines.readLine() }.firstNotNullOf { Regex("http://127\\.0\\.0\\.1:(\\d+)").find(it) }.groupValues[1].toInt()
        thread(isDaemon = true, name = "office talks") { runCatching { lines.forEachLine { } } }
    }

    /** As when the plug is pulled. */
    fun kill() {
        process?.destroyForcibly()?.waitFor()
        process = null
    }

    override fun close() = kill()

    /** What the office's page shows to a device that is to join: [link] in letters, and as the dark modules of a code for cameras. */
    class JoinCode(val link: String, val modules: List<List<Boolean>>) {
        val code: String get() = link.substringAfter('#')
    }

    /** A code with which a device joins: made on the office's page, as its people do. */
    fun joinCode(): JoinCode {
        val link = ProcessBuilder(program, "office", "--folder", folder.path, "--new-link").start().inputStream.bufferedReader().readText().trim()
        var cookie = ""
        fun call(path: String, form: String?): String {
            val address = "http://127.0.0.1:$port"
            val line = URL(address + path).openConnection() as HttpURLConnection
            line.instanceFollowRedirects = false
            if (cookie.isNotEmpty()) line.setRequestProperty("Cookie", cookie)
            if (form != null) {
                line.doOutput = true
                line.setRequestProperty("Origin", address)
                line.outputStream.use { it.write(form.toByteArray()) }
            }
            val status = line.responseCode
            line.getHeaderField("Set-Cookie")?.let { cookie = it.substringBefore(';') }
            val body = (if (status < 400) line.inputStream else line.errorStream)?.bufferedReader()?.readText().orEmpty()
            check(status < 400) { "$path: $status $body" }
            return body
        }
        call(link, null)
        val page = call("/devices/join", "name=" + URLEncoder.encode("Ines Fallow", "UTF-8"))
        val shown = checkNotNull(Regex("http[^\"< ]*/join#[A-Z0-9-]+").find(page)) { "the page shows no code: $page" }.value
        return JoinCode(shown, modules(page))
    }

    /** Drawn module by module, with the light ones around them. */
    private fun modules(page: String): List<List<Boolean>> {
        val side = checkNotNull(Regex("class=\"qr\" viewBox=\"0 0 (\\d+) ").find(page)) { "the page draws no code: $page" }.groupValues[1].toInt()
        val dark = Regex("M(\\d+) (\\d+)h1v1h-1z").findAll(page).map { it.groupValues[1].toInt() to it.groupValues[2].toInt() }.toSet()
        return List(side) { y -> List(side) { x -> x to y in dark } }
    }

    /** What lies on its disk of a visit, in order: read by Python's own SQLite, as the browser's tests do. */
    fun events(visit: String): List<ByteArray> {
        val query = "SELECT bytes FROM event WHERE visit = '$visit' ORDER BY seq"
        val command = listOf("python3", File(root, "tests/browser/rows.py").path, File(folder, "office.db").path, query)
        val process = ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start()
        val rows = JSONArray(process.inputStream.bufferedReader().readText())
        return (0 until rows.length()).map { at -> hex(rows.getJSONObject(at).getString("bytes")) }
    }

    private fun hex(digits: String) = digits.chunked(2).map { it.toInt(16).toByte() }.toByteArray()

    /** A photograph as it lies on its disk; none if it does not. */
    fun photo(digest: String): ByteArray? = File(folder, "photos/${digest.take(2)}/$digest").takeIf { it.exists() }?.readBytes()

    /** What is not whole, or was refused: nothing should be left over. */
    fun leftOver(): List<String> = listOf("parts", "aside").flatMap { File(folder, it).list().orEmpty().toList() }
}
