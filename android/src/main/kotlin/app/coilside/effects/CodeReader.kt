package app.coilside.effects

import android.app.Activity
import android.content.ActivityNotFoundException
import android.content.ClipData
import android.content.Context
import android.content.Intent
import android.os.Handler
import android.os.Looper
import android.provider.MediaStore
import app.coilside.Folders
import app.coilside.session.Session
import coilside.Action
import coilside.DoorFault
import coilside.codesInPhotograph
import java.io.File
import java.util.concurrent.Executors

/** Fills a field from a code in a picture that the camera takes for it. The core reads the code; the picture is not kept. */
class CodeReader(private val app: Context, private val session: Session) {
    private val main = Handler(Looper.getMainLooper())
    private val worker = Executors.newSingleThreadExecutor { Thread(it, "codes") }
    private val file get() = File(Folders.camera(app), "code.jpg")

    /** Told when what is said about it changed. */
    var changed: () -> Unit = {}

    /** The key of the words for how it goes; none where there is nothing to say. */
    var says: String? = null
        private set

    /** Whether a field may be filled from a code. */
    fun fills(field: String): Boolean = field in FIELDS

    fun take(activity: Activity) {
        file.delete()
        val address = Folders.address(file)
        val intent = Intent(MediaStore.ACTION_IMAGE_CAPTURE)
            .putExtra(MediaStore.EXTRA_OUTPUT, address)
            .addFlags(Intent.FLAG_GRANT_WRITE_URI_PERMISSION or Intent.FLAG_GRANT_READ_URI_PERMISSION)
        intent.clipData = ClipData.newRawUri("", address)
        try {
            activity.startActivityForResult(intent, CODE)
            say(null)
        } catch (none: ActivityNotFoundException) {
            say("camera-app-none")
        }
    }

    /** The camera answered. Returns whether the answer was meant for here. */
    fun came(request: Int, result: Int): Boolean {
        if (request != CODE) return false
        if (result != Activity.RESULT_OK) return true
        say("code-reading")
        session.begin()
        worker.execute {
            val code = try {
                codesInPhotograph(file.path).firstOrNull { !it.cut }?.text
            } catch (unreadable: DoorFault) {
                null
            }
            file.delete()
            main.post {
                say(if (code == null) "code-none" else null)
                code?.let { session.act(Action.Enter(FIELDS.first(), it)) }
                session.end()
            }
        }
        return true
    }

    private fun say(key: String?) {
        says = key
        changed()
    }

    fun close() {
        worker.shutdown()
        main.removeCallbacksAndMessages(null)
    }

    companion object {
        /** The request code. */
        const val CODE = 3

        /** The fields of the core that take what a code says. */
        private val FIELDS = setOf("join-code")
    }
}
