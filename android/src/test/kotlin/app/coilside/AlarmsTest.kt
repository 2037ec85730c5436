package app.coilside

import android.app.AlarmManager
import android.app.Notification
import android.content.Context
import android.content.Intent
import android.os.SystemClock
import android.os.Vibrator
import android.view.WindowManager
import app.coilside.support.Bell
import app.coilside.support.Scene
import app.coilside.support.withRole
import coilside.Action
import org.junit.After
import org.junit.Before
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TemporaryFolder
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode
import org.robolectric.shadows.ShadowAlarmManager
import org.robolectric.shadows.ShadowTextToSpeech

/** A waiting time calls the person, whatever became of the app and the phone. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 34], application = ShellApp::class, qualifiers = "en-w390dp-h844dp-port-mdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class AlarmsTest {
    @get:Rule
    val folder = TemporaryFolder()
    private val app get() = RuntimeEnvironment.getApplication()
    private lateinit var scene: Scene

    @Before
    fun begin() {
        scene = Scene(folder.newFolder("store"))
        scene.waiting()
    }

    @After
    fun close() = scene.phone.close()

    private fun waitMs() = checkNotNull(Bell.inMs()) { "no alarm is set" }

    @Test
    fun `it is exact, wakes the phone, and rings at the end of the least time and before that of the most`() {
        val screen = checkNotNull(scene.phone.session.screen)
        val dwell = screen.blocks.flatMap { if (it is coilside.Block.Step) it.blocks else listOf(it) }.filterIsInstance<coilside.Block.Dwell>().single()
        val (least, most) = listOf(dwell.leastAtUtcMs, dwell.mostAtUtcMs).map { (it - scene.ground.utcMs).toDouble() }
        assertEquals(List(2) { AlarmManager.ELAPSED_REALTIME_WAKEUP }, Bell.set().map { it.type })
        val (first, second) = Bell.set().map { (it.triggerAtMs - SystemClock.elapsedRealtime()).toDouble() }
        assertEquals(least, first, 1_500.0)
        assertTrue("the second rings at $second of $least to $most", second > least && second < most)
    }

    @Test
    fun `it rings while the process is dead, above a locked screen, with words that tell nothing of anybody`() {
        scene.phone.end()
        scene.ground.pass(waitMs() + 1)
        Bell.ring()
        scene.phone.settle()
        val message = checkNotNull(Bell.shown().singleOrNull()) { "nothing is shown" }
        assertNotNull("it is not shown above a locked screen", message.fullScreenIntent)
        assertEquals(Notification.CATEGORY_ALARM, message.category)
        val told = listOf(Notification.EXTRA_TITLE, Notification.EXTRA_TEXT).mapNotNull { message.extras.getCharSequence(it) }.joinToString(" ")
        assertTrue(told.isNotBlank())
        for (personal in listOf("Mill House", "Mill Lane", "Edda", "Marsh", "555")) assertTrue(told, !told.contains(personal))
        assertTrue(shadowOf(app.getSystemService(Context.VIBRATOR_SERVICE) as Vibrator).isVibrating)
        scene.phone.open(Bell.fullScreen())
        scene.hand.tap(checkNotNull(scene.phone.window.withRole("alarm-stop")) { scene.words() })
        assertEquals(emptyList<Notification>(), Bell.shown())
        assertEquals(false, shadowOf(app.getSystemService(Context.VIBRATOR_SERVICE) as Vibrator).isVibrating)
    }

    @Test
    fun `while it waits the display stays on, and no longer once the step was taken back`() {
        fun staysOn() = scene.phone.activity.window.attributes.flags and WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON != 0
        assertTrue("the display goes off", staysOn())
        val step = scene.phone.session.screen!!.blocks.filterIsInstance<coilside.Block.Step>().first { it.state == coilside.StepState.RUNNING }
        scene.phone.session.act(Action.Undo(step.id))
        scene.phone.settle()
        assertEquals("the display stays on for nothing", false, staysOn())
    }

    @Test
    fun `it is spoken`() {
        scene.ground.pass(waitMs() + 1)
        Bell.ring()
        scene.phone.settle()
        val voice = checkNotNull(ShadowTextToSpeech.getLastTextToSpeechInstance()) { "nobody speaks" }
        shadowOf(voice).onInitListener.onInit(android.speech.tts.TextToSpeech.SUCCESS)
        assertTrue(shadowOf(voice).lastSpokenText.orEmpty().isNotBlank())
    }

    @Test
    fun `after a boot it is set again for what is left of the time`() {
        val waitMs = waitMs()
        scene.phone.end()
        ShadowAlarmManager.reset()
        scene.ground.reboot(60_000)
        app.sendBroadcast(Intent(Intent.ACTION_BOOT_COMPLETED).setPackage(app.packageName))
        scene.phone.settle()
        assertEquals((waitMs - 60_000).toDouble(), waitMs().toDouble(), 2_500.0)
    }

    @Test
    fun `one whose step was taken back does not ring`() {
        val step = scene.phone.session.screen!!.blocks.filterIsInstance<coilside.Block.Step>().first { it.state == coilside.StepState.RUNNING }
        val set = checkNotNull(Bell.set().first())
        val waitMs = waitMs()
        scene.phone.session.act(Action.Undo(step.id))
        scene.phone.settle()
        scene.ground.pass(waitMs + 1)
        set.operation?.send()
        shadowOf(android.os.Looper.getMainLooper()).idle()
        scene.phone.settle()
        assertNull(scene.phone.window.withRole("alarm-stop"))
        assertEquals(emptyList<Notification>(), Bell.shown())
    }

    @Test
    fun `it rings once, also when the system sends it twice`() {
        val set = Bell.set().first()
        scene.ground.pass(waitMs() + 1)
        Bell.ring()
        scene.phone.settle()
        scene.hand.tap(checkNotNull(scene.phone.window.withRole("alarm-stop")))
        set.operation?.send()
        scene.phone.settle()
        assertNull(scene.phone.window.withRole("alarm-stop"))
        scene.phone.die()
        assertNull("it rings again after the process died", scene.phone.window.withRole("alarm-stop"))
    }
}
