package app.coilside.support

import android.graphics.Bitmap
import android.graphics.ImageDecoder
import java.io.File
import java.io.IOException
import org.robolectric.annotation.Implementation
import org.robolectric.annotation.Implements
import org.robolectric.util.ReflectionHelpers

/** What the phone's system can decode, in place of codecs that are not here. */
@Implements(ImageDecoder::class, minSdk = 28)
class SystemCodecs {
    companion object {
        /** What it makes of any picture; none where it knows none. */
        var picture: Bitmap? = null

        /** What it was asked to decode. */
        val asked = ArrayList<File>()

        @JvmStatic
        @Implementation
        fun decodeBitmap(source: ImageDecoder.Source, listener: ImageDecoder.OnHeaderDecodedListener?): Bitmap {
            asked += ReflectionHelpers.getField<File>(source, "mFile")
            return picture ?: throw IOException("no codec")
        }
    }
}
