package app.coilside

import app.coilside.support.Scene
import app.coilside.support.Sky
import org.json.JSONObject
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNull
import org.junit.Before
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TemporaryFolder
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** Where the visit takes place: a fresh fix, with how far it may be off. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 34], application = ShellApp::class, qualifiers = "en-w390dp-h844dp-port-mdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class PlaceTest {
    @get:Rule
    val folder = TemporaryFolder()
    private val scene: Scene by lazy { Scene(folder.newFolder("store")) }

    @Before
    fun begin() {
        Sky.on()
        Sky.allow()
        scene.begun()
    }

    @After
    fun close() = scene.phone.close()

    private fun fixed(): JSONObject? = scene.last("place-fixed")

    private fun doubtM(): Double? = fixed()?.getString("accuracy_m")?.toDouble()

    private fun fix(accuracyM: Float, ageMs: Long = 0) {
        Sky.fix(accuracyM = accuracyM, ageMs = ageMs)
        scene.phone.settle()
    }

    @Test
    fun `a good fix is taken at once, with its doubt`() {
        fix(accuracyM = 6f)
        assertEquals(6.0, doubtM())
    }

    @Test
    fun `what the system knew of long before is not where the phone is now`() {
        fix(accuracyM = 5f, ageMs = 600_000)
        assertNull(fixed())
        fix(accuracyM = 7f)
        assertEquals(7.0, doubtM())
    }

    @Test
    fun `a rough fix waits for a better one, and is taken where none comes`() {
        fix(accuracyM = 900f)
        assertNull("taken although a better one may come", fixed())
        fix(accuracyM = 400f)
        scene.pass(61_000)
        assertEquals(400.0, doubtM())
        assertEquals(1, scene.record().of("place-fixed").size)
    }
}
