package app.coilside.support

import android.graphics.Bitmap
import java.awt.Color
import java.awt.RenderingHints
import java.awt.image.BufferedImage
import java.awt.image.DataBufferByte
import java.awt.image.DataBufferInt
import java.awt.image.IndexColorModel
import java.io.File
import javax.imageio.ImageIO
import kotlin.math.abs

/** Small pictures of screens beside each other, in one picture. */
class ContactSheet(private val columns: Int) {
    private val tiles = ArrayList<BufferedImage>()

    fun add(screen: Bitmap) {
        tiles += small(screen)
    }

    val size: Int get() = tiles.size

    private fun small(screen: Bitmap): BufferedImage {
        var image = BufferedImage(screen.width, screen.height, BufferedImage.TYPE_INT_RGB)
        screen.getPixels(pixelsOf(image), 0, screen.width, 0, 0, screen.width, screen.height)
        // By halves first: a picture that is made much smaller at once has holes in its lines.
        while (image.width >= 2 * TILE_WIDTH) image = scaled(image, image.width / 2, image.height / 2)
        return scaled(image, TILE_WIDTH, image.height * TILE_WIDTH / image.width)
    }

    private fun scaled(image: BufferedImage, width: Int, height: Int) = BufferedImage(width, height, BufferedImage.TYPE_INT_RGB).apply {
        val pen = createGraphics()
        pen.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR)
        pen.drawImage(image, 0, 0, width, height, null)
        pen.dispose()
    }

    /** All of it, in as many colours as a small file has. */
    fun whole(): BufferedImage {
        val rows = (tiles.size + columns - 1) / columns
        val high = tiles.maxOf { it.height }
        val sheet = BufferedImage(GAP + columns * (TILE_WIDTH + GAP), GAP + rows * (high + GAP), BufferedImage.TYPE_INT_RGB)
        val pen = sheet.createGraphics()
        pen.color = Color(0x9A, 0xA6, 0xA8)
        pen.fillRect(0, 0, sheet.width, sheet.height)
        tiles.forEachIndexed { at, tile -> pen.drawImage(tile, GAP + at % columns * (TILE_WIDTH + GAP), GAP + at / columns * (high + GAP), null) }
        pen.dispose()
        return few(sheet)
    }

    /** With the 255 colours that are seen most, each pixel in the nearest of them. */
    private fun few(image: BufferedImage): BufferedImage {
        val pixels = pixelsOf(image)
        val counted = HashMap<Int, Int>()
        for (pixel in pixels) counted.merge(pixel and COARSE, 1, Int::plus)
        val palette = counted.entries.sortedByDescending { it.value }.take(COLOURS).map { it.key }
        fun part(shift: Int) = ByteArray(palette.size) { (palette[it] shr shift and 0xFF).toByte() }
        val model = IndexColorModel(8, palette.size, part(16), part(8), part(0))
        val nearest = HashMap<Int, Byte>()
        val indexed = BufferedImage(image.width, image.height, BufferedImage.TYPE_BYTE_INDEXED, model)
        val indices = (indexed.raster.dataBuffer as DataBufferByte).data
        for (at in pixels.indices) {
            val colour = pixels[at] and COARSE
            indices[at] = nearest.getOrPut(colour) { palette.indices.minBy { apart(palette[it], colour) }.toByte() }
        }
        return indexed
    }

    companion object {
        const val TILE_WIDTH = 180
        private const val GAP = 10
        private const val COLOURS = 250

        /** The lowest bits of a colour say nothing at this size. */
        private const val COARSE = 0xF8F8F8

        private fun apart(one: Int, other: Int): Int =
            abs((one shr 16 and 0xFF) - (other shr 16 and 0xFF)) + abs((one shr 8 and 0xFF) - (other shr 8 and 0xFF)) + abs((one and 0xFF) - (other and 0xFF))

        /** The pixels themselves, row by row. */
        private fun pixelsOf(image: BufferedImage): IntArray = (image.raster.dataBuffer as DataBufferInt).data

        private fun inTrueColours(image: BufferedImage) = BufferedImage(image.width, image.height, BufferedImage.TYPE_INT_RGB).apply {
            createGraphics().run {
                drawImage(image, 0, 0, null)
                dispose()
            }
        }

        fun write(sheet: BufferedImage, file: File) = check(ImageIO.write(sheet, "png", file)) { "no PNG could be written" }

        /** How far two sheets are apart, 0 to 1: the mean over all pixels; 1 where they have another size. */
        fun difference(one: BufferedImage, other: BufferedImage): Double {
            if (one.width != other.width || one.height != other.height) return 1.0
            val (these, those) = listOf(one, other).map { pixelsOf(inTrueColours(it)) }
            var sum = 0L
            for (at in these.indices) sum += apart(these[at], those[at])
            return sum / (3.0 * 255 * one.width * one.height)
        }
    }
}
