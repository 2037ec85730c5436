package app.coilside.support

import java.io.ByteArrayOutputStream
import java.io.DataOutputStream

/** What a camera writes into a photograph beside the picture: when, where, and how it was held. */
data class Exif(
    /** '2026:03:09 09:00:00', by the camera's clock. */
    val taken: String,
    /** '+01:00'. */
    val offset: String,
    /** EXIF orientation, 1 to 8. */
    val orientation: Int,
    val latitudeDeg: Double,
    val longitudeDeg: Double,
) {
    /** The bytes of the JPEG segment APP1, its marker included. */
    fun segment(): ByteArray {
        val tiff = tiff()
        val out = ByteArrayOutputStream()
        DataOutputStream(out).apply {
            writeShort(0xFFE1)
            writeShort(2 + 6 + tiff.size)
            writeBytes("Exif\u0000\u0000")
            write(tiff)
        }
        return out.toByteArray()
    }

    /** A big-endian TIFF of three folders: the picture's, the camera's, the place's. */
    private fun tiff(): ByteArray {
        val picture = { exifAt: Int, placeAt: Int ->
            listOf(short(0x0112, orientation), ascii(0x0132, taken), long(0x8769, exifAt), long(0x8825, placeAt))
        }
        val camera = listOf(ascii(0x9003, taken), ascii(0x9004, taken), ascii(0x9011, offset))
        val place = listOf(
            ascii(0x0001, if (latitudeDeg < 0) "S" else "N"),
            degrees(0x0002, latitudeDeg),
            ascii(0x0003, if (longitudeDeg < 0) "W" else "E"),
            degrees(0x0004, longitudeDeg),
        )
        val begin = 8
        val exifAt = begin + folder(picture(0, 0), begin).size
        val placeAt = exifAt + folder(camera, exifAt).size
        val out = ByteArrayOutputStream()
        DataOutputStream(out).apply {
            writeBytes("MM")
            writeShort(42)
            writeInt(begin)
        }
        out.write(folder(picture(exifAt, placeAt), begin))
        out.write(folder(camera, exifAt))
        out.write(folder(place, placeAt))
        return out.toByteArray()
    }

    private class Entry(val tag: Int, val type: Int, val count: Int, val value: ByteArray)

    private fun folder(entries: List<Entry>, at: Int): ByteArray {
        val head = ByteArrayOutputStream()
        val rest = ByteArrayOutputStream()
        val restAt = at + 2 + entries.size * 12 + 4
        DataOutputStream(head).apply {
            writeShort(entries.size)
            for (entry in entries) {
                writeShort(entry.tag)
                writeShort(entry.type)
                writeInt(entry.count)
                if (entry.value.size <= 4) {
                    write(entry.value.copyOf(4))
                } else {
                    writeInt(restAt + rest.size())
                    rest.write(entry.value)
                    if (entry.value.size % 2 == 1) rest.write(0)
                }
            }
            writeInt(0)
        }
        return head.toByteArray() + rest.toByteArray()
    }

    private fun bytes(write: DataOutputStream.() -> Unit): ByteArray =
        ByteArrayOutputStream().also { DataOutputStream(it).write() }.toByteArray()

    private fun ascii(tag: Int, text: String) = Entry(tag, 2, text.length + 1, text.toByteArray(Charsets.US_ASCII) + 0)

    private fun short(tag: Int, value: Int) = Entry(tag, 3, 1, bytes { writeShort(value) })

    private fun long(tag: Int, value: Int) = Entry(tag, 4, 1, bytes { writeInt(value) })

    /** Degrees, minutes and ten-thousandths of seconds. */
    private fun degrees(tag: Int, value: Double): Entry {
        val tenThousandths = Math.round(Math.abs(value) * 3600 * 10_000)
        val minutes = tenThousandths / (60 * 10_000)
        val parts = listOf(minutes / 60 to 1L, minutes % 60 to 1L, tenThousandths % (60 * 10_000) to 10_000L)
        return Entry(tag, 5, 3, bytes { for ((over, under) in parts) { writeInt(over.toInt()); writeInt(under.toInt()) } })
    }
}
