package app.coilside.support

import java.awt.Color
import java.awt.RenderingHints
import java.awt.image.BufferedImage
import java.awt.image.DataBufferInt
import java.io.ByteArrayOutputStream
import java.security.MessageDigest
import java.util.Random
import javax.imageio.ImageIO

/** A photograph as a camera app hands it over. */
class Photo(val bytes: ByteArray) {
    /** SHA-256 in hexadecimal: by this name the original is kept. */
    val digest: String = sha256(bytes)
}

fun sha256(bytes: ByteArray): String =
    MessageDigest.getInstance("SHA-256").digest(bytes).joinToString("") { "%02x".format(it) }

/** Draws photographs with Java's own encoder; the same number and the same EXIF give the same bytes. */
object Photos {
    /** [width] pixels wide: 320 are some 30 kB, 1200 some 400 kB. */
    fun draw(number: Int, exif: Exif?, width: Int = 320): Photo {
        val plain = ByteArrayOutputStream().also { ImageIO.write(scene(number, width, width * 3 / 4), "jpeg", it) }.toByteArray()
        if (exif == null) return Photo(plain)
        // After the two bytes with which every JPEG begins.
        return Photo(plain.copyOfRange(0, 2) + exif.segment() + plain.copyOfRange(2, plain.size))
    }

    /** A code on a page, photographed a little aslant. Dark [modules] in rows from the top. */
    fun ofCode(modules: List<List<Boolean>>): Photo {
        val printed = BufferedImage(modules.size * MODULE_PX, modules.size * MODULE_PX, BufferedImage.TYPE_INT_RGB)
        val ink = printed.createGraphics()
        ink.color = PAGE
        ink.fillRect(0, 0, printed.width, printed.height)
        ink.color = Color(34, 36, 40)
        modules.forEachIndexed { y, row -> row.forEachIndexed { x, dark -> if (dark) ink.fillRect(x * MODULE_PX, y * MODULE_PX, MODULE_PX, MODULE_PX) } }
        ink.dispose()
        val image = BufferedImage(1600, 1200, BufferedImage.TYPE_INT_RGB)
        val pen = image.createGraphics()
        pen.color = PAGE
        pen.fillRect(0, 0, image.width, image.height)
        pen.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR)
        pen.rotate(Math.toRadians(4.0), image.width / 2.0, image.height / 2.0)
        pen.drawImage(printed, (image.width - printed.width) / 2, (image.height - printed.height) / 2, null)
        pen.dispose()
        return Photo(ByteArrayOutputStream().also { ImageIO.write(image, "jpeg", it) }.toByteArray())
    }

    private const val MODULE_PX = 18
    private val PAGE = Color(226, 224, 218)

    /** Stripes, boxes and grain: sharp, and different from one number to the next. */
    private fun scene(number: Int, width: Int, height: Int): BufferedImage {
        val random = Random(number.toLong())
        val image = BufferedImage(width, height, BufferedImage.TYPE_INT_RGB)
        val pen = image.createGraphics()
        pen.color = Color(80 + random.nextInt(90), 80 + random.nextInt(90), 80 + random.nextInt(90))
        pen.fillRect(0, 0, width, height)
        val pitch = 5 + random.nextInt(6)
        pen.color = Color(200, 202, 198)
        for (x in width / 10..width * 6 / 10 step pitch) pen.drawLine(x, height / 6, x + random.nextInt(3), height * 5 / 6)
        repeat(24) {
            pen.color = Color(random.nextInt(256), random.nextInt(256), random.nextInt(256))
            pen.fillRect(random.nextInt(width), random.nextInt(height), 4 + random.nextInt(28), 3 + random.nextInt(18))
        }
        pen.dispose()
        val pixels = (image.raster.dataBuffer as DataBufferInt).data
        for (at in pixels.indices) {
            val grain = random.nextInt(13) - 6
            fun part(shift: Int) = ((pixels[at] shr shift and 0xFF) + grain).coerceIn(0, 255) shl shift
            pixels[at] = part(16) or part(8) or part(0)
        }
        return image
    }
}
