package app.coilside

import android.app.Activity
import android.content.Context
import android.content.Intent
import android.content.IntentFilter
import android.content.ComponentName
import android.content.pm.ActivityInfo
import android.content.pm.ResolveInfo
import android.os.PowerManager
import app.coilside.support.Bell
import app.coilside.support.English
import app.coilside.support.OtherApp
import app.coilside.support.Photos
import app.coilside.support.Scene
import app.coilside.support.Sky
import app.coilside.support.SmallDisk
import app.coilside.support.TestGround
import app.coilside.support.withPress
import app.coilside.support.withRole
import coilside.Action
import coilside.Block
import coilside.Request
import org.junit.After
import org.junit.Assert.assertArrayEquals
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

/** What the phone cannot give is a screen with words and a way on, never an end. */
@RunWith(RobolectricTestRunner::class)
@Config(sdk = [26, 34], application = ShellApp::class, qualifiers = "en-w390dp-h844dp-port-mdpi")
@GraphicsMode(GraphicsMode.Mode.NATIVE)
class TroubleTest {
    @get:Rule
    val folder = TemporaryFolder()
    private val app get() = RuntimeEnvironment.getApplication()
    private val scene: Scene by lazy { Scene(folder.newFolder("store")) }
    private var disk: SmallDisk? = null

    @After
    fun close() {
        scene.phone.close()
        disk?.close()
    }

    private fun says(key: String) {
        val words = English[key]
        assertTrue("'$words' is not said: ${scene.words()}", scene.words().contains(words))
    }

    private fun tap(role: String) = scene.hand.tap(checkNotNull(scene.phone.window.withRole(role)) { "no $role: ${scene.words()}" })

    private fun photosTaken() = scene.record().of("photo-taken").size

    @Test
    fun `a camera that is left without a picture asks again, and gives way`() {
        scene.atCamera()
        checkNotNull(scene.camera).answers(scene.phone.activity, Activity.RESULT_CANCELED)
        scene.phone.settle()
        tap("photo-take")
        val again = checkNotNull(OtherApp.openedBy(scene.phone.activity)) { "the camera does not open again" }
        again.answers(scene.phone.activity, Activity.RESULT_CANCELED)
        scene.phone.settle()
        tap("photo-cancel")
        assertEquals(emptyMap<String, Request>(), scene.phone.session.wanted)
        assertEquals(0, photosTaken())
        assertNull("the sheet stays", scene.phone.window.withRole("photo-take"))
        // And the visit goes on: the photograph is still to be had.
        scene.technician.next()
        assertTrue(checkNotNull(OtherApp.openedBy(scene.phone.activity)).isCamera)
    }

    @Test
    fun `without a camera app a picture can be chosen, to the byte`() {
        shadowOf(app).checkActivities(true)
        val gallery = IntentFilter().apply {
            addAction(Intent.ACTION_OPEN_DOCUMENT)
            addAction(Intent.ACTION_GET_CONTENT)
            addCategory(Intent.CATEGORY_OPENABLE)
            addCategory(Intent.CATEGORY_DEFAULT)
            addDataType("image/*")
        }
        val name = ComponentName("gallery", "gallery.Pick")
        shadowOf(app.packageManager).addActivityIfNotPresent(name)
        shadowOf(app.packageManager).addIntentFilterForActivity(name, gallery)
        scene.placed()
        scene.technician.playUntil { scene.phone.window.withRole("photo-pick") != null }
        says("shell-camera-app-none")
        tap("photo-pick")
        val picker = checkNotNull(OtherApp.openedBy(scene.phone.activity)) { "nothing to choose from opens" }
        val photo = Photos.draw(7, null)
        val chosen = android.net.Uri.parse("content://gallery/7")
        shadowOf(app.contentResolver).registerInputStream(chosen, photo.bytes.inputStream())
        picker.answers(scene.phone.activity, Activity.RESULT_OK, Intent().setData(chosen))
        scene.phone.settle()
        assertEquals(photo.digest, scene.last("photo-taken")?.getString("digest"))
        assertArrayEquals(photo.bytes, java.io.File(folder.root, "store/originals/${photo.digest}").readBytes())
    }

    @Test
    fun `without any app for pictures it is said, and the visit goes on without`() {
        shadowOf(app).checkActivities(true)
        scene.placed()
        scene.technician.playUntil { scene.phone.window.withRole("photo-pick") != null }
        tap("photo-pick")
        says("shell-picture-app-none")
        tap("photo-cancel")
        assertEquals(emptyMap<String, Request>(), scene.phone.session.wanted)
    }

    @Test
    fun `a full phone keeps the picture and what was pressed, says so, and goes on when there is room`() {
        val small = SmallDisk(folder.newFolder("small"), 12).also { disk = it }
        val full = Scene(small.folder)
        full.atCamera()
        val photo = Photos.draw(9, null)
        checkNotNull(full.camera).writes(photo)
        small.fill()
        checkNotNull(full.camera).answers(full.phone.activity, Activity.RESULT_OK)
        full.phone.settle()
        assertTrue(full.words(), full.words().contains(English["shell-phone-full"]))
        assertEquals(0, full.record().of("photo-taken").size)
        small.makeRoom()
        full.hand.tap(checkNotNull(full.phone.window.withRole("again")) { full.words() })
        assertEquals(photo.digest, full.last("photo-taken")?.getString("digest"))
        full.phone.close()
    }

    @Test
    fun `the place is asked for with its reason, and refused it is a visit without a place`() {
        Sky.on()
        Sky.deny()
        scene.begun()
        says("shell-place-why")
        tap("place-allow")
        assertTrue("nobody was asked", Sky.answer(scene.phone, granted = false))
        assertEquals(English["shell-place-refused"], scene.last("place-missing")?.getString("why"))
        assertNull(scene.phone.window.withRole("place-allow"))
        scene.technician.next()
    }

    @Test
    fun `whoever goes on without the place is not asked by the system`() {
        Sky.on()
        Sky.deny()
        scene.begun()
        tap("place-without")
        assertNull(shadowOf(scene.phone.activity).lastRequestedPermission)
        assertNotNull(scene.last("place-missing"))
    }

    @Test
    fun `a permission that is taken back in mid-visit takes the place from the photographs and nothing else`() {
        scene.placed()
        assertNotNull(scene.last("place-fixed"))
        Sky.deny()
        // The system ends an app whose permission it takes back.
        scene.phone.die(abruptly = true)
        scene.technician.playUntil { photosTaken() == 1 }
        val facts = checkNotNull(scene.last("photo-taken")).getJSONObject("facts")
        assertTrue("$facts", !facts.has("phone_place"))
    }

    @Test
    fun `a place that is switched off is said`() {
        Sky.allow()
        Sky.off()
        scene.begun()
        assertEquals(English["shell-place-off"], scene.last("place-missing")?.getString("why"))
    }

    @Test
    fun `a minute without a fix ends the search, and a fix that comes later is no harm`() {
        Sky.on()
        Sky.allow()
        scene.begun()
        scene.pass(58_000)
        assertNull("given up too early", scene.last("place-missing"))
        scene.pass(4_000)
        assertEquals(English["shell-place-late"], scene.last("place-missing")?.getString("why"))
        Sky.fix()
        scene.phone.settle()
        assertNull(scene.last("place-fixed"))
    }

    @Test
    fun `a clock that is set forward ends no waiting time`() {
        scene.waiting()
        val waitMs = checkNotNull(Bell.inMs())
        scene.ground.utcMs += waitMs * 2
        app.sendBroadcast(Intent(Intent.ACTION_TIME_CHANGED).setPackage(app.packageName))
        scene.phone.settle()
        val dwell = scene.phone.session.screen!!.blocks.flatMap { if (it is Block.Step) it.blocks else listOf(it) }.filterIsInstance<Block.Dwell>().single()
        assertEquals("the monotonic clock counts: $dwell", coilside.DwellState.RUNNING, dwell.state)
        assertNull("it rings too early", scene.phone.window.withRole("alarm-stop"))
        val again = checkNotNull(Bell.inMs())
        assertTrue("the alarm rings in $again of $waitMs ms", again in (waitMs - 2_000)..(waitMs + 2_000))
    }

    @Test
    fun `a battery saver that may hold up the alarm is said beside the waiting time`() {
        ShadowAlarmManager.setCanScheduleExactAlarms(true)
        shadowOf(app.getSystemService(Context.POWER_SERVICE) as PowerManager).setIsPowerSaveMode(true)
        scene.waiting()
        says("shell-alarm-saver")
    }

    @Test
    @Config(sdk = [34])
    fun `an exact alarm that is not allowed is set all the same, and said`() {
        ShadowAlarmManager.setCanScheduleExactAlarms(false)
        scene.waiting()
        says("shell-alarm-phone-late")
        assertNotNull("no alarm is set", Bell.inMs())
        tap("alarm-allow")
        assertEquals(android.provider.Settings.ACTION_REQUEST_SCHEDULE_EXACT_ALARM, shadowOf(app).nextStartedActivity?.action)
    }

    @Test
    fun `messages that are not allowed are said beside the waiting time`() {
        shadowOf(app.getSystemService(Context.NOTIFICATION_SERVICE) as android.app.NotificationManager).setNotificationsEnabled(false)
        scene.waiting()
        says("shell-alarm-phone-quiet")
    }
}
