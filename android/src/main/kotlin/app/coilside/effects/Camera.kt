package app.coilside.effects

import android.app.Activity
import android.content.ActivityNotFoundException
import android.content.ClipData
import android.content.Context
import android.content.Intent
import android.net.Uri
import android.os.Handler
import android.os.Looper
import android.provider.MediaStore
import app.coilside.Folders
import app.coilside.session.Session
import coilside.Outcome
import coilside.Request
import java.io.File
import java.io.IOException
import java.util.concurrent.Executors

/** What is happening with the photograph that is wanted first. */
enum class Stage { CHOOSE, AWAY, SAVING }

/** A photograph that the core wants. */
class Wanted(val id: String, val request: Request.TakePhoto)

/**
 * Takes the photographs that the core asks for, one after the other: by the phone's camera app, in full size and to the
 * byte, or by choosing a picture. Used on the main thread.
 */
class Camera(private val app: Context, private val session: Session, private val locator: Locator) {
    private val main = Handler(Looper.getMainLooper())
    private val worker = Executors.newSingleThreadExecutor { Thread(it, "pictures") }

    /** Requests for which the camera was opened already. */
    private val opened = HashSet<String>()

    /** Told when the stage or the problem changed. */
    var changed: () -> Unit = {}
    var stage = Stage.CHOOSE
        private set

    /** The key of the words for what went wrong, or the platform's own. */
    var problem: String? = null
        private set

    /** The request for which another app is in front. */
    var awayFor: String? = null
        private set

    /** The photograph that is wanted first. */
    val wanted: Wanted?
        get() = session.wanted.entries.firstNotNullOfOrNull { (id, request) ->
            (request as? Request.TakePhoto)?.let { Wanted(id, it) }
        }

    /** Opens the camera for a photograph that was just asked for, without another press. */
    fun hasten(activity: Activity) {
        val id = wanted?.id ?: return
        if (stage != Stage.CHOOSE || id !in session.fresh || !opened.add(id)) return
        take(activity)
    }

    /** The activity was made anew while another app was in front for [effectId]. */
    fun resumed(effectId: String?) {
        if (awayFor != null || effectId == null) return
        awayFor = effectId
        opened += effectId
        to(Stage.AWAY, null)
    }

    /** The app is in front again. An answer comes before; where none came, there are still the ways. */
    fun returned() {
        if (stage == Stage.AWAY) to(Stage.CHOOSE, null)
    }

    fun take(activity: Activity) {
        val id = wanted?.id ?: return
        locator.prime()
        val file = fileOf(id)
        file.delete()
        val address = Folders.address(file)
        val intent = Intent(MediaStore.ACTION_IMAGE_CAPTURE)
            .putExtra(MediaStore.EXTRA_OUTPUT, address)
            .addFlags(Intent.FLAG_GRANT_WRITE_URI_PERMISSION or Intent.FLAG_GRANT_READ_URI_PERMISSION)
        // Some systems grant the address only where it lies in the clip too.
        intent.clipData = ClipData.newRawUri("", address)
        start(activity, intent, CAMERA, id, "camera-app-none")
    }

    /** Whether a picture that could not be kept is still there. */
    val canKeepAgain: Boolean get() = stage == Stage.CHOOSE && problem != null && wanted?.let { fileOf(it.id).length() > 0 } == true

    fun keepAgain() {
        if (canKeepAgain) wanted?.let { keep(it.id, null) }
    }

    fun pick(activity: Activity) {
        val id = wanted?.id ?: return
        val intent = Intent(Intent.ACTION_OPEN_DOCUMENT).addCategory(Intent.CATEGORY_OPENABLE).setType("image/*")
        start(activity, intent, GALLERY, id, "picture-app-none")
    }

    private fun start(activity: Activity, intent: Intent, request: Int, id: String, noneKey: String) {
        try {
            awayFor = id
            to(Stage.AWAY, null)
            activity.startActivityForResult(intent, request)
        } catch (none: ActivityNotFoundException) {
            awayFor = null
            to(Stage.CHOOSE, noneKey)
        } catch (forbidden: SecurityException) {
            awayFor = null
            to(Stage.CHOOSE, noneKey)
        }
    }

    /** The other app answered. Returns whether the answer was meant for here. */
    fun came(request: Int, result: Int, data: Intent?): Boolean {
        if (request != CAMERA && request != GALLERY) return false
        val id = awayFor ?: return true
        awayFor = null
        if (result != Activity.RESULT_OK) {
            if (request == CAMERA) fileOf(id).delete()
            to(Stage.CHOOSE, null)
            return true
        }
        val chosen = data?.data
        if (request == GALLERY && chosen == null) to(Stage.CHOOSE, "picture-none") else keep(id, chosen)
        return true
    }

    /** A camera app that outlived us may have left its picture without telling. */
    fun adopt() {
        val id = wanted?.id ?: return
        if (stage == Stage.CHOOSE && awayFor == null && id !in session.fresh && fileOf(id).length() > 0) keep(id, null)
    }

    fun cancel() {
        val id = wanted?.id ?: return
        if (stage == Stage.SAVING) return
        awayFor = null
        fileOf(id).delete()
        to(Stage.CHOOSE, null)
        session.done(id, Outcome.Cancelled)
    }

    /** Keeps the camera's picture, or the one at [chosen]; the place is asked for beside it. */
    private fun keep(id: String, chosen: Uri?) {
        to(Stage.SAVING, null)
        session.begin()
        worker.execute {
            val failed = try {
                val picture = if (chosen == null) fileOf(id) else copyOf(chosen, id)
                val final = session.ask { it.incomingPath(id) } ?: throw IOException(id)
                kept(picture, File(final))
                null
            } catch (not: NotKept) {
                keyOf(not.why)
            } catch (other: IOException) {
                other.toString()
            } catch (refused: SecurityException) {
                refused.toString()
            }
            main.post {
                if (failed == null) located(id) else to(Stage.CHOOSE, failed)
                session.end()
            }
        }
    }

    private fun located(id: String) = locator.atHand { place ->
        session.done(id, Outcome.Photo(place))
        to(Stage.CHOOSE, null)
    }

    private fun copyOf(chosen: Uri, id: String): File {
        val from = app.contentResolver.openInputStream(chosen) ?: throw NotKept(NotKept.Why.EMPTY)
        return from.use { copied(it, fileOf(id)) }
    }

    private fun keyOf(why: NotKept.Why) = when (why) {
        NotKept.Why.EMPTY -> "picture-none"
        NotKept.Why.TOO_LARGE -> "problem-too-large"
        NotKept.Why.FULL -> "phone-full"
    }

    private fun fileOf(id: String) = File(Folders.camera(app), id.replace('/', '_') + ".jpg")

    private fun to(next: Stage, why: String?) {
        stage = next
        problem = why
        changed()
    }

    fun close() {
        worker.shutdown()
        main.removeCallbacksAndMessages(null)
    }

    companion object {
        /** Request codes. */
        const val CAMERA = 1
        const val GALLERY = 2
    }
}
