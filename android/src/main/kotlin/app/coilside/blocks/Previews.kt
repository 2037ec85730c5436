package app.coilside.blocks

import android.graphics.Bitmap
import android.graphics.BitmapFactory
import android.os.Handler
import android.os.Looper
import android.util.LruCache
import app.coilside.session.Session
import java.io.File
import java.util.concurrent.Executors

/**
 * The small pictures of photographs, read off the main thread and kept while they are shown again and again. Where the core made
 * none, the system is asked for one of the photograph itself, which lies in [originals] by its digest.
 */
class Previews(private val session: Session, private val originals: File) {
    private val reader = Executors.newSingleThreadExecutor { Thread(it, "previews") }
    private val main = Handler(Looper.getMainLooper())
    private val kept = LruCache<String, Bitmap>(KEPT)

    /** Gives the picture at once or later, on the main thread; none where there is no preview. */
    fun of(digest: String, show: (Bitmap?) -> Unit) {
        kept.get(digest)?.let { return show(it) }
        session.begin()
        reader.execute {
            val picture = session.ask { it.previewPath(digest) }?.let(::read) ?: decodedBySystem(File(originals, digest), SIDE_MAX_PX)
            main.post {
                picture?.let { kept.put(digest, it) }
                show(picture)
                session.end()
            }
        }
    }

    private fun read(path: String): Bitmap? {
        val size = BitmapFactory.Options().apply { inJustDecodeBounds = true }
        BitmapFactory.decodeFile(path, size)
        var smaller = 1
        while (maxOf(size.outWidth, size.outHeight) / smaller > SIDE_MAX_PX) smaller *= 2
        return BitmapFactory.decodeFile(path, BitmapFactory.Options().apply { inSampleSize = smaller })
    }

    fun close() {
        reader.shutdown()
        main.removeCallbacksAndMessages(null)
    }

    private companion object {
        const val KEPT = 24
        const val SIDE_MAX_PX = 1200
    }
}
