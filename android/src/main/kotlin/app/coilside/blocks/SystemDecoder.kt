package app.coilside.blocks

import android.graphics.Bitmap
import android.graphics.ImageDecoder
import android.os.Build
import java.io.File
import java.io.IOException

/** A picture of a kind that the system knows and the core does not, no side longer than [sideMaxPx]; none where the system does not know it either. */
fun decodedBySystem(file: File, sideMaxPx: Int): Bitmap? {
    if (Build.VERSION.SDK_INT < Build.VERSION_CODES.P || !file.exists()) return null
    return try {
        ImageDecoder.decodeBitmap(ImageDecoder.createSource(file)) { decoder, info, _ ->
            val longest = maxOf(info.size.width, info.size.height)
            val share = minOf(1f, sideMaxPx.toFloat() / longest)
            decoder.setTargetSize((info.size.width * share).toInt().coerceAtLeast(1), (info.size.height * share).toInt().coerceAtLeast(1))
            decoder.allocator = ImageDecoder.ALLOCATOR_SOFTWARE
        }
    } catch (unknown: IOException) {
        null
    }
}
