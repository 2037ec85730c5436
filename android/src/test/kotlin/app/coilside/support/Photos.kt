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
    private const val WIDTH = 320
    private const val HEIGHT = 240

    fun draw(number: Int, exif: Exif?): Photo {
        val plain = ByteArrayOutputStream().also { ImageIO.write(scene(number), "jpeg", it) }.toByteArray()
        if (exif == null) return Photo(plain)
        // After the two bytes with which every JPEG begins.
        return Photo(plain.copyOfRange(0, 2) + exif.segment() + plain.copyOfRange(2, plain.size))
    }

    /** Stripes, boxes and grain: sharp, and different from one number to the next. */
    private fun scene(number: Int): BufferedImage {
        val random = Random(number.toLong())
        val image = BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB)
        val pen = image.createGraphics()
        pen.color = Color(80 + random.nextInt(90), 80 + random.nextInt(90), 80 + random.nextInt(90))
        pen.fillRect(0, 0, WIDTH, HEIGHT)
        val pitch = 5 + random.nextInt(6)
        pen.color = Color(200, 202, 198)
        for (x in 30..190 step pitch) pen.drawLine(x, 40, x + random.nextInt(3), 200)
        repeat(24) {
            pen.color = Color(random.nextInt(256), random.nextInt(256), random.nextInt(256))
            pen.fillRect(random.nextInt(WIDTH), random.nextInt(HEIGHT), 4 + random.nextInt(28), 3 + random.nextInt(18))
        }
        pen.dispose()
        for (y in 0 until HEIGHT) for (x in 0 until WIDTH) {
            val grain = random.nextInt(13) - 6
            val at = Color(image.getRGB(x, y))
            val with = { part: Int -> (part + grain).coerceIn(0, 255) }
            image.setRGB(x, y, Color(with(at.red), with(at.green), with(at.blue)).rgb)
        }
        return image
    }
}
