package app.coilside

import app.coilside.support.Phone
import app.coilside.support.Record
import app.coilside.support.Scene
import app.coilside.support.Sky
import app.coilside.support.Technician
import app.coilside.support.TestGround
import app.coilside.support.Village
import app.coilside.support.root
import coilside.Action
import java.io.File
import org.junit.After
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TemporaryFolder
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** A whole visit through the views, on the oldest and the newest system, by a phone that forgets and is turned all the time. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 34], application = ShellApp::class, qualifiers = "en-w390dp-h844dp-port-mdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class VisitTest {
    @get:Rule
    val folder = TemporaryFolder()
    private lateinit var phone: Phone
    private lateinit var technician: Technician

    @After
    fun close() = phone.close()

    @Test
    fun `a visit with a process that dies at every third step and a phone that turns at every fifth comes to the record of every shell`() {
        Sky.on()
        phone = Phone(TestGround(folder.newFolder("store"))).open()
        phone.assigned(Village.assignments())
        technician = Technician(phone, Scene.photographs())
        technician.hand.tap(technician.find(Action.StartVisit(Village.ASSIGNMENT)))

        technician.playUntil(after = { moves, _ -> trouble(moves) }) { phone.session.screen?.title == SEALED }

        val visit = phone.core { it.currentVisit() ?: "" }
        val record = Record(phone.core { it.events(visit) })
        assertNull(record.broken())
        assertEquals(File(root, "tests/visits/kinds.txt").readText().trim(), record.kinds().joinToString("\n"))
        assertEquals(technician.taken.map { it.digest }, record.of("photo-taken").map { it.getString("digest") })
        assertTrue("only ${phone.deaths} deaths", phone.deaths >= 30)
        assertTrue("only ${phone.turns} turns", phone.turns >= 20)
        println("visit: ${record.events.size} events, ${phone.deaths} process deaths, ${phone.turns} turns, ${technician.waits} waits")
    }

    private fun trouble(moves: Int) {
        phone.ground.pass(STEP_MS)
        if (moves % 5 == 0) phone.turn()
        // Sometimes the system keeps what it should of the app, sometimes it does not even ask.
        if (moves % 3 == 0) phone.die(abruptly = moves % 2 == 0)
    }

    private companion object {
        const val STEP_MS = 5_000L
        const val SEALED = "The record is sealed"
    }
}
