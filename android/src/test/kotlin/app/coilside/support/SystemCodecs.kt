package app.coilside.support

import android.graphics.Bitmap
import android.graphics.ImageDecoder
import java.io.File
import java.io.IOException
import org.robolectric.annotation.Implementation
import org.robolectric.annotation.Implements
import org.robolectric.shadow.api.Shadow
import org.robolectric.shadows.ShadowNativeImageDecoder
import org.robolectric.util.ReflectionHelpers
import org.robolectric.util.ReflectionHelpers.ClassParameter

/** What the phone's system can decode, in place of codecs that are not here. */
@Implements(ImageDecoder::class, minSdk = 28)
class SystemCodecs : ShadowNativeImageDecoder() {
    companion object {
        /** What it makes of any picture in a file; none where it knows none. */
        var picture: Bitmap? = null

        /** What it was asked to decode. */
        val asked = ArrayList<File>()

        @JvmStatic
        @Implementation
        fun decodeBitmap(source: ImageDecoder.Source, listener: ImageDecoder.OnHeaderDecodedListener?): Bitmap {
            // The system's own drawings are decoded as ever.
            if (source.javaClass.simpleName != "FileSource") {
                val given = ClassParameter.from(ImageDecoder.Source::class.java, source)
                return Shadow.directlyOn(ImageDecoder::class.java, "decodeBitmap", given, ClassParameter.from(ImageDecoder.OnHeaderDecodedListener::class.java, listener))
            }
            asked += ReflectionHelpers.getField<File>(source, "mFile")
            return picture ?: throw IOException("no codec")
        }
    }
}
