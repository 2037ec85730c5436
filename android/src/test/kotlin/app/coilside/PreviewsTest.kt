package app.coilside

import android.app.Activity
import android.content.Intent
import android.graphics.Bitmap
import android.graphics.drawable.BitmapDrawable
import android.net.Uri
import android.view.View
import android.widget.ImageView
import app.coilside.blocks.PictureView
import app.coilside.frame.PhotoSheet
import app.coilside.support.English
import app.coilside.support.OtherApp
import app.coilside.support.Photo
import app.coilside.support.Photos
import app.coilside.support.Scene
import app.coilside.support.SystemCodecs
import app.coilside.support.all
import app.coilside.support.sha256
import app.coilside.support.withRole
import app.coilside.support.words
import coilside.Action
import coilside.Block
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Before
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TemporaryFolder
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** What was photographed is seen: by the core's small picture, else by what the phone's system makes of it, else words say that it is kept. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [34], application = ShellApp::class, qualifiers = "en-w390dp-h844dp-port-mdpi", shadows = [SystemCodecs::class])
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class PreviewsTest {
    @get:Rule
    val folder = TemporaryFolder()
    private val scene: Scene by lazy { Scene(folder.newFolder("store")) }

    @Before
    fun begin() {
        SystemCodecs.picture = null
        SystemCodecs.asked.clear()
    }

    @After
    fun close() = scene.phone.close()

    /** Chooses a picture of the phone's, and looks at how it is shown. */
    private fun chosen(photo: Photo): PictureView {
        scene.placed()
        scene.technician.goTo("photographs")
        scene.hand.tap(scene.technician.find(Action.Shoot("")))
        checkNotNull(OtherApp.openedBy(scene.phone.activity)).answers(scene.phone.activity, Activity.RESULT_CANCELED)
        scene.phone.settle()
        scene.hand.tap(checkNotNull(scene.phone.window.withRole("photo-pick")) { scene.words() })
        val address = Uri.parse("content://gallery/1")
        shadowOf(RuntimeEnvironment.getApplication().contentResolver).registerInputStream(address, photo.bytes.inputStream())
        checkNotNull(OtherApp.openedBy(scene.phone.activity)).answers(scene.phone.activity, Activity.RESULT_OK, Intent().setData(address))
        scene.phone.settle()
        assertEquals(photo.digest, scene.last("photo-taken")?.getString("digest"))
        return scene.phone.window.all().filterIsInstance<PictureView>().single()
    }

    private fun shown(view: View): Bitmap? = view.all().filterIsInstance<ImageView>().firstNotNullOfOrNull { it.drawable as? BitmapDrawable }?.bitmap

    /** What a phone's camera may be set to: only its beginning is one, which is all that the core looks at. */
    private val heic = Photo(byteArrayOf(0, 0, 0, 24) + "ftypheic".toByteArray() + ByteArray(500) { it.toByte() })

    private fun flags() = scene.phone.session.screen!!.blocks.filterIsInstance<Block.Shot>().flatMap { it.photos }.single().flags

    @Test
    fun `a picture that the core knows is shown by its own small one`() {
        SystemCodecs.picture = Bitmap.createBitmap(3, 2, Bitmap.Config.ARGB_8888)
        val bitmap = checkNotNull(shown(chosen(Photos.draw(5, null))))
        assertTrue("${bitmap.width} × ${bitmap.height}", bitmap.width > 100)
    }

    @Test
    fun `a picture that the core does not know is shown as the system decodes it`() {
        val decoded = Bitmap.createBitmap(400, 300, Bitmap.Config.ARGB_8888)
        SystemCodecs.picture = decoded
        assertEquals(decoded, shown(chosen(heic)))
        assertEquals(heic.digest, sha256(SystemCodecs.asked.single().readBytes()))
    }

    @Test
    fun `the one before stands beside the one that is to be taken`() {
        scene.leaving()
        scene.technician.goTo("photographs")
        val shot = scene.phone.session.screen!!.blocks.filterIsInstance<Block.Shot>().first { it.before != null }
        scene.hand.tap(scene.technician.find(shot.press.press))
        checkNotNull(OtherApp.openedBy(scene.phone.activity)).answers(scene.phone.activity, Activity.RESULT_CANCELED)
        scene.phone.settle()
        val sheet = scene.phone.window.all().first { it is PhotoSheet }
        val before = sheet.all().filterIsInstance<PictureView>().single()
        assertTrue(before.words(), English["shell-before-picture"] in before.words() && shot.before!!.caption in before.words())
        assertTrue("it is not seen", checkNotNull(shown(before)).width > 100)
        assertTrue("there is no way to take it", sheet.withRole("photo-take") != null)
    }

    @Test
    @Config(sdk = [26, 34])
    fun `a picture that nobody here can decode is kept, and words say so`() {
        assertEquals(null, shown(chosen(heic)))
        val said = flags()
        assertTrue("not all is said: $said", said.all { it in scene.words() })
        assertTrue("$said", said.any { it.startsWith(English["flag-no-preview"].substringBefore('.')) })
    }
}
