package app.coilside.effects

import java.io.File
import java.io.FileOutputStream
import java.io.IOException
import java.io.InputStream
import java.io.RandomAccessFile
import java.nio.channels.FileChannel
import java.nio.file.StandardOpenOption

/** The largest photograph, bytes. */
const val PHOTO_BYTES_MAX = 60_000_000L

/** Why a picture was not kept. */
class NotKept(val why: Why) : IOException(why.name) {
    enum class Why { EMPTY, TOO_LARGE, FULL }
}

/** Copies a picture of another app to [part]; nothing is left there where it fails. */
fun copied(from: InputStream, part: File): File {
    try {
        FileOutputStream(part).use { to ->
            val buffer = ByteArray(BUFFER_BYTES)
            var length = 0L
            while (true) {
                val read = from.read(buffer)
                if (read < 0) break
                length += read
                if (length > PHOTO_BYTES_MAX) throw NotKept(NotKept.Why.TOO_LARGE)
                to.write(buffer, 0, read)
            }
        }
        return part
    } catch (failed: IOException) {
        part.delete()
        throw if (isFull(failed)) NotKept(NotKept.Why.FULL) else failed
    }
}

/** Gives a whole picture its final name, on the disk and not only in its cache. Nothing half is ever found under that name. */
fun kept(picture: File, final: File) {
    if (picture.length() == 0L) throw NotKept(NotKept.Why.EMPTY)
    if (picture.length() > PHOTO_BYTES_MAX) throw NotKept(NotKept.Why.TOO_LARGE)
    try {
        final.parentFile?.mkdirs()
        sync(picture)
        if (!picture.renameTo(final)) {
            val part = copied(picture.inputStream(), File(final.path + ".part"))
            sync(part)
            if (!part.renameTo(final)) throw IOException(final.path)
            picture.delete()
        }
        final.parentFile?.let(::syncFolder)
    } catch (failed: IOException) {
        throw if (isFull(failed)) NotKept(NotKept.Why.FULL) else failed
    }
}

/** Whether the disk has no more room. */
fun isFull(failed: IOException): Boolean {
    val words = failed.toString() + failed.cause
    return "ENOSPC" in words || "No space left" in words || "EDQUOT" in words
}

private fun sync(file: File) = RandomAccessFile(file, "rw").use { it.fd.sync() }

private fun syncFolder(folder: File) {
    try {
        FileChannel.open(folder.toPath(), StandardOpenOption.READ).use { it.force(true) }
    } catch (unable: IOException) {
        // Some file systems cannot; the file itself is safe.
    }
}

private const val BUFFER_BYTES = 64 * 1024
