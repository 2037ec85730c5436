package app.coilside

import app.coilside.blocks.InkPad
import app.coilside.blocks.strokesOf
import app.coilside.support.English
import app.coilside.support.Scene
import app.coilside.support.all
import app.coilside.support.input
import app.coilside.support.press
import app.coilside.support.said
import app.coilside.support.withRole
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
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** The customer draws with a finger, and the record has what they drew. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 34], application = ShellApp::class, qualifiers = "en-w390dp-h844dp-port-mdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class InkTest {
    @get:Rule
    val folder = TemporaryFolder()
    private val scene: Scene by lazy { Scene(folder.newFolder("store")) }

    @Before
    fun present() {
        scene.leaving()
        val there = scene.phone.window.all().firstOrNull { it.press != null && it.said() == English["customer-present"] }
        scene.hand.tap(checkNotNull(there) { "nobody can say that the customer is there: ${scene.words()}" })
    }

    @After
    fun close() = scene.phone.close()

    private val pad get() = scene.phone.window.all().filterIsInstance<InkPad>().single()
    private val block get() = scene.phone.session.screen!!.blocks.filterIsInstance<Block.Ink>().single()

    /** What the core has, as shares of the box. */
    private fun drawn() = strokesOf(block.text).map { stroke -> stroke.map { (x, y) -> x.toFloat() / block.width.toInt() to y.toFloat() / block.height.toInt() } }

    private fun near(wanted: Pair<Float, Float>, found: Pair<Float, Float>) {
        assertEquals("across: $found", wanted.first, found.first, 0.02f)
        assertEquals("down: $found", wanted.second, found.second, 0.03f)
    }

    @Test
    fun `strokes of a finger come to the core where they were drawn, and a palm beside it draws nothing`() {
        val first = listOf(0.2f to 0.2f, 0.3f to 0.8f, 0.4f to 0.3f)
        scene.hand.stroke(pad, first)
        scene.hand.stroke(pad, listOf(0.6f to 0.5f, 0.9f to 0.5f), palm = 0.1f to 0.9f)
        val strokes = drawn()
        assertEquals(2, strokes.size)
        for (point in first) near(point, strokes[0].minBy { (x, y) -> Math.abs(x - point.first) + Math.abs(y - point.second) })
        near(0.6f to 0.5f, strokes[1].first())
        near(0.9f to 0.5f, strokes[1].last())
        assertTrue("the palm drew", strokes.flatten().none { (x, y) -> x < 0.15f || y > 0.85f })
        assertTrue(pad.said(), pad.said().contains(English["shell-ink-drawn"]))
    }

    @Test
    fun `a stroke downwards draws and does not push the page`() {
        scene.hand.stroke(pad, listOf(0.5f to 0.1f, 0.5f to 0.9f))
        val stroke = drawn().single()
        near(0.5f to 0.1f, stroke.first())
        near(0.5f to 0.9f, stroke.last())
    }

    @Test
    fun `cleared it is empty, and what is drawn then outlives a turn of the device and enters the record`() {
        scene.hand.stroke(pad, listOf(0.1f to 0.1f, 0.2f to 0.2f))
        scene.hand.tap(checkNotNull(scene.phone.window.withRole("ink-clear")))
        assertEquals(0, drawn().size)
        assertTrue(pad.said(), pad.said().contains(English["shell-ink-empty"]))
        scene.hand.stroke(pad, listOf(0.3f to 0.3f, 0.7f to 0.6f))
        scene.phone.turn()
        assertEquals(1, drawn().size)
        assertTrue(pad.said(), pad.said().contains(English["shell-ink-drawn"]))
        val name = checkNotNull(scene.phone.window.input("customer-name")) { scene.words() }
        scene.hand.type(name, "Edda Marsh")
        scene.hand.enter(name)
        scene.hand.tap(scene.technician.find(Action.Sign(drawn = true)))
        assertEquals("the record says nothing of what was drawn", DIGEST_CHARS, scene.last("customer-noted")?.optString("shown")?.length)
        val stroke = drawn().single()
        near(0.3f to 0.3f, stroke.first())
        near(0.7f to 0.6f, stroke.last())
        assertTrue("it is not said: ${scene.words()}", block.taken != null)
    }

    private companion object {
        /** SHA-256 in hexadecimal. */
        const val DIGEST_CHARS = 64
    }
}
