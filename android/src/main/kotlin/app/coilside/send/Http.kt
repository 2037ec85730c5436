package app.coilside.send

import coilside.FileSlice
import coilside.Header
import coilside.Sending
import java.io.ByteArrayOutputStream
import java.io.EOFException
import java.io.IOException
import java.io.InputStream
import java.io.OutputStream
import java.io.RandomAccessFile
import java.net.HttpURLConnection
import java.net.URL

/** What came back. Status 0: no answer, and the body says why. */
class Reply(val status: Int, val headers: List<Header>, val body: ByteArray)

/** One request to the office, which can be broken off from another thread. */
class Carriage(private val sending: Sending) {
    @Volatile
    private var connection: HttpURLConnection? = null

    @Volatile
    private var broken = false

    /** Sends it and waits for the answer. */
    fun run(): Reply = try {
        read(open())
    } catch (failed: IOException) {
        Reply(0, emptyList(), failed.toString().toByteArray())
    } catch (refused: RuntimeException) {
        // An address that is none, or a permission that was withdrawn: no answer either.
        Reply(0, emptyList(), refused.toString().toByteArray())
    } finally {
        connection?.disconnect()
    }

    /** Breaks it off: [run] ends without an answer. */
    fun breakOff() {
        broken = true
        connection?.disconnect()
    }

    private fun open(): HttpURLConnection {
        val origin = sending.origin ?: throw IOException("this device has no office")
        val open = URL(origin + sending.path).openConnection() as HttpURLConnection
        connection = open
        if (broken) throw IOException("broken off")
        open.connectTimeout = CONNECT_MAX_MS
        open.readTimeout = READ_MAX_MS
        open.instanceFollowRedirects = false
        open.useCaches = false
        open.requestMethod = sending.method
        for (header in sending.headers) open.setRequestProperty(header.name, header.value)
        val file = sending.file
        when {
            file != null -> send(open, file.length.toLong()) { stream(file, it) }
            sending.body.isNotEmpty() -> send(open, sending.body.size.toLong()) { it.write(sending.body) }
            sending.method in WITH_BODY -> send(open, 0) { }
        }
        return open
    }

    private fun send(open: HttpURLConnection, length: Long, write: (OutputStream) -> Unit) {
        open.doOutput = true
        open.setFixedLengthStreamingMode(length)
        open.outputStream.use(write)
    }

    private fun stream(slice: FileSlice, to: OutputStream) = RandomAccessFile(slice.path, "r").use { file ->
        file.seek(slice.from.toLong())
        val buffer = ByteArray(BUFFER_BYTES)
        var left = slice.length.toLong()
        while (left > 0) {
            if (broken) throw IOException("broken off")
            val read = file.read(buffer, 0, minOf(left, buffer.size.toLong()).toInt())
            if (read < 0) throw EOFException(slice.path)
            to.write(buffer, 0, read)
            left -= read
        }
    }

    private fun read(open: HttpURLConnection): Reply {
        val status = open.responseCode
        if (status < 0) throw IOException("no answer of the kind that was expected")
        val body = (if (status >= ERRORS_FROM) open.errorStream else open.inputStream)?.use(::limited) ?: ByteArray(0)
        val headers = open.headerFields.filterKeys { it != null }
            .flatMap { (name, values) -> values.map { Header(name, it) } }
        return Reply(status, headers, body)
    }

    private fun limited(from: InputStream): ByteArray {
        val all = ByteArrayOutputStream()
        val buffer = ByteArray(BUFFER_BYTES)
        while (all.size() <= ANSWER_BYTES_MAX) {
            val read = from.read(buffer)
            if (read < 0) return all.toByteArray()
            all.write(buffer, 0, read)
        }
        throw IOException("the answer is longer than $ANSWER_BYTES_MAX bytes")
    }

    private companion object {
        /** The longest that connecting may take, milliseconds. */
        const val CONNECT_MAX_MS = 10_000

        /** The longest that nothing may come, milliseconds. */
        const val READ_MAX_MS = 40_000

        /** The most that is read of an answer, bytes. */
        const val ANSWER_BYTES_MAX = 1_000_000
        const val BUFFER_BYTES = 64 * 1024
        const val ERRORS_FROM = 400
        val WITH_BODY = setOf("POST", "PUT", "PATCH")
    }
}
