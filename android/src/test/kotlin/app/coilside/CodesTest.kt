package app.coilside

import android.app.Activity
import android.widget.EditText
import app.coilside.support.English
import app.coilside.support.OtherApp
import app.coilside.support.Photo
import app.coilside.support.Photos
import app.coilside.support.Wired
import app.coilside.support.input
import app.coilside.support.withRole
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
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** A code is read by the core from a picture that the phone's camera app took: the one on the page of a real office. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 34], application = ShellApp::class, qualifiers = "en-w390dp-h844dp-port-mdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class CodesTest {
    @get:Rule
    val folder = TemporaryFolder()
    private lateinit var wired: Wired
    private val scene get() = wired.scene

    @Before
    fun begin() {
        wired = Wired(folder.root)
        wired.atJoining()
    }

    @After
    fun end() = wired.close()

    private fun field(): EditText = checkNotNull(scene.phone.window.input("join-code"))

    /** Opens the camera for a code; what it answers with. */
    private fun photographed(photo: Photo?, result: Int = Activity.RESULT_OK) {
        scene.hand.tap(checkNotNull(scene.phone.window.withRole("code-read")) { scene.words() })
        val camera = checkNotNull(OtherApp.openedBy(scene.phone.activity)) { "no camera opens" }
        assertTrue(camera.isCamera)
        photo?.let(camera::writes)
        camera.answers(scene.phone.activity, result)
        scene.phone.settle()
    }

    private fun kept() = Folders.camera(RuntimeEnvironment.getApplication()).list().orEmpty().toList()

    @Test
    fun `the office's code is photographed from its page, and the phone joins`() {
        val shown = wired.office.joinCode()
        photographed(Photos.ofCode(shown.modules))
        assertEquals(shown.link, field().text.toString())
        assertEquals("the picture of a code is no photograph of the visit", emptyList<String>(), kept())
        wired.type("join-name", "Phone of the tests")
        wired.pressJoin(shown.link.substringBefore("/join"))
    }

    @Test
    fun `a picture without a code is said, and what was typed stays`() {
        scene.hand.type(field(), "ABCD")
        photographed(Photos.draw(3, null))
        assertTrue(scene.words(), scene.words().contains(English["shell-code-none"]))
        assertEquals("ABCD", field().text.toString())
        assertEquals(emptyList<String>(), kept())
    }

    @Test
    fun `a camera that is left without a picture changes nothing`() {
        scene.hand.type(field(), "ABCD")
        photographed(null, Activity.RESULT_CANCELED)
        assertEquals("ABCD", field().text.toString())
        assertTrue(scene.words(), !scene.words().contains(English["shell-code-none"]))
    }
}
