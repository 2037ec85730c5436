package app.coilside.support

import java.io.File
import java.io.IOException

/** A disk of a few megabytes of its own, which can be filled to the last byte. Mounted, as root, like that of `tests/visits/no_room.rs`. */
class SmallDisk(val folder: File, megabytes: Int) : AutoCloseable {
    private val filler = File(folder, "filler")

    init {
        run("mount", "-t", "tmpfs", "-o", "size=${megabytes}m", "tmpfs", folder.path)
    }

    fun fill() {
        try {
            filler.outputStream().use { out -> while (true) out.write(ByteArray(4096)) }
        } catch (full: IOException) {
            check(folder.usableSpace < 4096) { "the disk is not full: $full" }
        }
    }

    fun makeRoom() = check(filler.delete()) { "the disk was not full" }

    override fun close() = run("umount", "-l", folder.path)

    private fun run(vararg command: String) {
        val process = ProcessBuilder(*command).redirectErrorStream(true).start()
        val said = process.inputStream.bufferedReader().readText()
        check(process.waitFor() == 0) { "this test needs root, to ${command.joinToString(" ")}: $said" }
    }
}
