package app.coilside.support

import java.awt.Color
import java.awt.image.BufferedImage
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
        for (y in 0 until height) for (x in 0 until width) {
            val grain = random.nextInt(13) - 6
            val at = Color(image.getRGB(x, y))
            val with = { part: Int -> (part + grain).coerceIn(0, 255) }
            image.setRGB(x, y, Color(with(at.red), with(at.green), with(at.blue)).rgb)
        }
        return image
    }
}
