package app.coilside.support

import android.app.Activity
import android.content.Intent
import android.net.Uri
import android.provider.MediaStore
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf

/** Another app that the shell opened and whose answer it waits for. */
class OtherApp(val intent: Intent, private val requestCode: Int) {
    val isCamera: Boolean get() = intent.action == MediaStore.ACTION_IMAGE_CAPTURE

    /** Where the camera app puts its picture. */
    private val output: Uri
        @Suppress("DEPRECATION")
        get() = checkNotNull(intent.getParcelableExtra(MediaStore.EXTRA_OUTPUT)) { "the camera is not told where to put the picture" }

    /** The camera app writes its picture, through the provider and nothing else. */
    fun writes(photo: Photo) {
        val resolver = RuntimeEnvironment.getApplication().contentResolver
        checkNotNull(resolver.openOutputStream(output)) { "nothing can be written to $output" }.use { it.write(photo.bytes) }
    }

    /** Its answer, as the system hands it over: to the activity that is there now. */
    fun answers(activity: Activity, result: Int, data: Intent? = null) {
        shadowOf(activity).callOnActivityResult(requestCode, result, data)
    }

    companion object {
        /** The app that an activity opened last and that was not seen yet. */
        fun openedBy(activity: Activity): OtherApp? =
            shadowOf(activity).nextStartedActivityForResult?.let { OtherApp(it.intent, it.requestCode) }
    }
}
