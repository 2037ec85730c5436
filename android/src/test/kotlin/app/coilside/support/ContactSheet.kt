package app.coilside.support

import android.graphics.Bitmap
import java.awt.Color
import java.awt.RenderingHints
import java.awt.image.BufferedImage
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
        val pixels = IntArray(screen.width * screen.height).also { screen.getPixels(it, 0, screen.width, 0, 0, screen.width, screen.height) }
        var image = BufferedImage(screen.width, screen.height, BufferedImage.TYPE_INT_RGB).apply { setRGB(0, 0, width, height, pixels, 0, width) }
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
        val counted = HashMap<Int, Int>()
        for (y in 0 until image.height) for (x in 0 until image.width) counted.merge(image.getRGB(x, y) and COARSE, 1, Int::plus)
        val palette = counted.entries.sortedByDescending { it.value }.take(COLOURS).map { it.key and 0xFFFFFF }
        fun part(shift: Int) = ByteArray(palette.size) { (palette[it] shr shift and 0xFF).toByte() }
        val model = IndexColorModel(8, palette.size, part(16), part(8), part(0))
        val nearest = HashMap<Int, Int>()
        val indexed = BufferedImage(image.width, image.height, BufferedImage.TYPE_BYTE_INDEXED, model)
        for (y in 0 until image.height) for (x in 0 until image.width) {
            val colour = image.getRGB(x, y) and COARSE and 0xFFFFFF
            val index = nearest.getOrPut(colour) { palette.indices.minBy { apart(palette[it], colour) } }
            indexed.raster.setSample(x, y, 0, index)
        }
        return indexed
    }

    companion object {
        const val TILE_WIDTH = 180
        private const val GAP = 10
        private const val COLOURS = 250

        /** The lowest bits of a colour say nothing at this size. */
        private const val COARSE = 0xFFF8F8F8.toInt()

        private fun apart(one: Int, other: Int): Int = listOf(16, 8, 0).sumOf { shift -> abs((one shr shift and 0xFF) - (other shr shift and 0xFF)) }

        fun write(sheet: BufferedImage, file: File) = check(ImageIO.write(sheet, "png", file)) { "no PNG could be written" }

        /** How far two sheets are apart, 0 to 1: the mean over all pixels; 1 where they have another size. */
        fun difference(one: BufferedImage, other: BufferedImage): Double {
            if (one.width != other.width || one.height != other.height) return 1.0
            var sum = 0L
            for (y in 0 until one.height) for (x in 0 until one.width) sum += apart(one.getRGB(x, y), other.getRGB(x, y))
            return sum / (3.0 * 255 * one.width * one.height)
        }
    }
}
